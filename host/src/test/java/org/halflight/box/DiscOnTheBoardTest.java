package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.bench.DiscEdges;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.PrintedDisc;
import org.halflight.export.DiscEdgesTable;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.uncertainty.RigKnowledge;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * A slotted disc before the real firmware in its simulator, read by the command through a
 * pseudo-terminal: the disc's geometry is the truth, which neither the board's clock nor its light
 * know. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
class DiscOnTheBoardTest {
  /** The clock of the board is fast, and every slot of the disc must come out the same. */
  private static final double FAST_PPM = 3450;

  /** Turns of the script: a minute, of which the reading takes a few seconds. */
  private static final int TURNS = 600;

  /** As many different turns are scripted, one after the other and again. */
  private static final int DIFFERENT_TURNS = 16;

  private static final double FIRST_TURN_SECONDS = 0.5;

  @TempDir private Path folder;

  @Test
  void theSlotsComeOutAsTheDiscIsCut() throws Exception {
    TurningDisc disc = TurningDisc.invented(11);
    Path file = folder.resolve("edges.csv");
    List<String> said = new ArrayList<>();
    try (BenchInABox box = BenchInABox.start(folder, scenario(disc))) {
      int code =
          TypedCommand.execute(
              folder,
              said,
              (line, keyboard) -> {
                if (line.matches("[1-5]\\. .*")) {
                  keyboard.type("");
                }
              },
              "disc",
              "read",
              "--port",
              box.port(),
              "--seconds",
              "4",
              "--cut",
              "0.05",
              "--rpm",
              String.format(Locale.ROOT, "%.4f", 60 / meanTurnSeconds(disc)),
              "--rpm-ppm",
              "20",
              "--edges",
              file.toString());
      assertThat(code).as(String.join("\n", said)).isZero();
    }
    assertThat(said)
        .anyMatch(line -> line.contains("simulated board: real firmware"))
        .anyMatch(line -> line.startsWith("5. Start the motor"));
    DiscEdges edges = DiscEdgesTable.read(file);
    DiscReading reading =
        ((DiscReading.Found)
                edges.read(new PrintedDisc(PrintedDisc.SLOT_DEGREES, 0.05, 63), Optional.empty()))
            .reading();
    assertThat(Files.size(file)).isPositive();
    check(reading, disc);
  }

  private static void check(DiscReading reading, TurningDisc disc) {
    DiscComparison comparison = DiscComparison.of(reading, RigKnowledge.UNCALIBRATED);
    assertThat(reading.turns()).isGreaterThan(25);
    assertThat(comparison.rows()).hasSize(5);
    for (int i = 0; i < 5; i++) {
      DiscComparison.Row row = comparison.rows().get(i);
      double truth = reading.turnSeconds() * disc.degreesSeen(i) / 360;
      double error = row.slot().effectiveSeconds() - truth;
      System.out.printf(
          Locale.ROOT,
          "simulated: slot of %.1f degrees: %.4f ms, %+.2f us off the geometry put in (%+.3f %%);"
              + " the rig states %.1f us, the disc itself %.1f us%n",
          row.slot().degrees(),
          1e3 * row.slot().effectiveSeconds(),
          1e6 * error,
          100 * error / truth,
          1e6 * row.rigSeconds(),
          1e6 * row.discSeconds());
      assertThat(Math.abs(error)).isLessThan(row.rigSeconds());
      // Against the angles as printed, by what was stated of the cut.
      assertThat(Math.abs(row.errorSeconds())).isLessThan(row.discSeconds() + row.rigSeconds());
    }
    assertThat(comparison.verdict()).isNotEqualTo(DiscComparison.Verdict.DISAGREES);
    assertThat(reading.disc().millimetres(reading.swingDegrees())).isCloseTo(0.33, within(0.1));
    double fast = reading.clock(60 / meanTurnSeconds(disc), 0).fastPpm();
    System.out.printf(
        Locale.ROOT, "simulated: clock by the disc's speed %.0f ppm, put in 3450%n", fast);
    // The turns that were read are not all that were scripted, and each has its own speed.
    assertThat(fast).isCloseTo(FAST_PPM, within(300.0));
  }

  private static double meanTurnSeconds(TurningDisc disc) {
    double sum = 0;
    for (int turn = 0; turn < DIFFERENT_TURNS; turn++) {
      sum += disc.turnSeconds(turn);
    }
    return sum / DIFFERENT_TURNS;
  }

  private static List<String> scenario(TurningDisc disc) {
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "clock %.0f 0", FAST_PPM));
    lines.add("light all 40 4000");
    lines.add("lag all 1");
    lines.add("hysteresis 10");
    for (int turn = 0; turn < DIFFERENT_TURNS; turn++) {
      LightPath path = disc.turn(turn, 1);
      double[] seconds = path.seconds();
      double[] open = path.open();
      lines.add("curve turn" + turn);
      for (int i = 0; i < seconds.length; i++) {
        lines.add(String.format(Locale.ROOT, "%.6f %.9f", 1e6 * seconds[i], open[i]));
      }
      lines.add("end-curve");
    }
    lines.add(BenchInABox.NAMED);
    double at = FIRST_TURN_SECONDS;
    for (int turn = 0; turn < TURNS; turn++) {
      lines.add(String.format(Locale.ROOT, "fire %.7f turn%d", at, turn % DIFFERENT_TURNS));
      at += disc.turnSeconds(turn % DIFFERENT_TURNS);
    }
    return lines;
  }
}
