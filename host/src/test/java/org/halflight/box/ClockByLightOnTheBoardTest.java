package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The clock of the real firmware held against a lamp on the mains, by the command through a
 * pseudo-terminal: light that goes up and down a hundred times a second of the bench's own time,
 * while the board's clock is fast. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class ClockByLightOnTheBoardTest {
  private static final double FAST_PPM = 3450;
  private static final Pattern FAST = Pattern.compile("The clock is ([0-9.]+) ppm fast");

  @TempDir private Path folder;

  @Test
  void aLampOnTheMainsTellsTheRateOfTheClock() throws Exception {
    List<String> said = new ArrayList<>();
    int code;
    try (BenchInABox box = BenchInABox.start(folder, scenario())) {
      code =
          TypedCommand.execute(
              box,
              folder,
              said,
              (line, keyboard) -> {},
              "clock",
              "--source",
              "mains-lamp",
              "--hertz",
              "50",
              "--input",
              "light",
              "--seconds",
              "5",
              "--port",
              box.port());
    }
    String all = String.join("\n", said);
    assertThat(code).as(all).isZero();
    Matcher fast = FAST.matcher(all);
    assertThat(fast.find()).as(all).isTrue();
    System.out.printf(
        Locale.ROOT, "simulated: clock by the lamp %s ppm fast, put in 3450%n", fast.group(1));
    // The simulated mains do not wander; what is stated (577 ppm) is for those that do.
    assertThat(Double.parseDouble(fast.group(1))).isCloseTo(FAST_PPM, within(20.0));
    assertThat(all)
        .contains("standard uncertainty 577")
        .contains("a lamp on the mains")
        .contains("simulated board: real firmware");
  }

  /** A second of light of a lamp on 50 Hz, again and again. */
  private static List<String> scenario() {
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "clock %.0f 0", FAST_PPM));
    lines.add("light all 40 4000");
    lines.add("curve lamp");
    for (int half = 0; half <= 200; half++) {
      lines.add(half * 5000 + (half % 2 == 0 ? " 0.5" : " 0.9"));
    }
    lines.add("end-curve");
    lines.add(BenchInABox.NAMED);
    for (int second = 0; second < 300; second++) {
      lines.add(String.format(Locale.ROOT, "fire %.3f lamp", 0.001 + second));
    }
    return lines;
  }
}
