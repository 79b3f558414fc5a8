package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.uncertainty.DiscComparison;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** See {@link DiscOnTheBoard}; all figures are simulated. */
@ExtendWith(AvrTools.class)
@Tag("board")
class DiscOnTheBoardTest {
  @TempDir private Path folder;

  @Test
  void theSlotsComeOutAsTheDiscIsCutAndAFaultIsFound() throws Exception {
    DiscOnTheBoard.Outcome right =
        DiscOnTheBoard.run(Files.createDirectory(folder.resolve("right")), List.of());
    DiscOnTheBoard.Outcome faulty =
        DiscOnTheBoard.run(
            Files.createDirectory(folder.resolve("faulty")), List.of(DiscOnTheBoard.FAULT));
    DiscOnTheBoard.page(right, faulty).forEach(System.out::println);

    assertThat(right.code()).as(String.join("\n", right.said())).isZero();
    assertThat(right.said())
        .anyMatch(line -> line.contains("simulated board: real firmware"))
        .anyMatch(line -> line.startsWith("5. Start the motor"));
    assertThat(right.reading().turns()).isGreaterThan(25);
    assertThat(right.comparison().rows()).hasSize(5);
    for (int i = 0; i < 5; i++) {
      DiscComparison.Row row = right.comparison().rows().get(i);
      assertThat(Math.abs(right.errorSeconds(i))).isLessThan(row.rigSeconds());
      // Against the angles as printed, by what was stated of the cut.
      assertThat(Math.abs(row.errorSeconds())).isLessThan(row.discSeconds() + row.rigSeconds());
    }
    assertThat(right.comparison().verdict()).isNotEqualTo(DiscComparison.Verdict.DISAGREES);
    assertThat(right.reading().disc().millimetres(right.reading().swingDegrees()))
        .isCloseTo(0.33, within(0.1));
    // The turns that were read are not all that were scripted, and each has its own speed.
    assertThat(right.reading().clock(DiscOnTheBoard.turnsAMinute(), 0).orElseThrow().fastPpm())
        .isCloseTo(DiscOnTheBoard.FAST_PPM, within(300.0));

    assertThat(faulty.comparison().verdict()).isEqualTo(DiscComparison.Verdict.DISAGREES);
    assertThat(faulty.code()).isEqualTo(1);
    // A level 300 of 3960 mV too low: the chord of the round light moves by that over its slope,
    // 4/pi sqrt(1 - x^2) of the light in its width, x about 0.53 between the two levels.
    double perLevel = 2.546 / 360 * 0.1 * Math.PI / 4 / Math.sqrt(1 - 0.53 * 0.53);
    assertThat(faulty.reading().offsetSeconds()).isCloseTo(300 / 3960.0 * perLevel, within(15e-6));
  }
}
