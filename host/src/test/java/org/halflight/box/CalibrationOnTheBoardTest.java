package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** A calibrated rig holds what its budget states. All figures are simulated. */
@ExtendWith(AvrTools.class)
@Tag("board")
class CalibrationOnTheBoardTest {
  private static final double MILLIVOLTS_PER_COUNT = 5000.0 / 1024;

  @TempDir private Path folder;

  @Test
  void calibratedTimesLieWithinTheirStatedUncertainty() throws Exception {
    CalibratedOnTheBoard.Outcome outcome = CalibratedOnTheBoard.run(folder);
    CalibratedOnTheBoard.page(outcome).stream()
        .filter(line -> line.startsWith("|"))
        .forEach(line -> System.out.println("simulated: " + line));
    for (CalibratedOnTheBoard.Row row : outcome.rows()) {
      assertThat(Math.abs(row.after().error()))
          .as("calibrated: %s", row)
          .isLessThan(row.after().expanded());
      assertThat(Math.abs(row.before().error()))
          .as("uncalibrated: %s", row)
          .isLessThan(row.before().expanded())
          .isGreaterThan(5 * Math.abs(row.after().error()));
      // A budget that is never wrong because it states anything is of no use. At 1/500 the bound of
      // the two-level rule and the untested light over the lens rule it: no light curve corrects
      // here, and nobody moved the panel.
      assertThat(row.after().expanded()).as("stated: %s", row).isLessThan(0.042);
    }
    found(outcome.calibration().profile());
  }

  /** The page was written by the same code; what it says of calibrated times must hold too. */
  @Test
  void thePageStatesNoLessThanItMeasured() throws Exception {
    List<String> page = Files.readAllLines(Path.of("docs/validation.md"));
    int from = page.indexOf(CalibratedOnTheBoard.HEADING);
    assertThat(from).isNotNegative();
    List<String> rows =
        page.subList(from, page.size()).stream()
            .filter(line -> line.startsWith("| 1"))
            .limit(9)
            .toList();
    assertThat(rows).hasSize(9);
    for (String row : rows) {
      String[] cells = row.replace("%", "").split("\\|", -1);
      assertThat(Math.abs(Double.parseDouble(cells[5].strip())))
          .as(row)
          .isLessThan(Double.parseDouble(cells[6].strip()));
    }
  }

  /** The profile holds what was put into the bench. */
  private static void found(RigProfile profile) {
    System.out.printf(
        "simulated: %s, %s, %s%n", profile.clock(), profile.lag(), profile.tripPoints());
    ClockRate clock = profile.clock().orElseThrow();
    // It gains 1 ppm a minute.
    assertThat(clock.fastPpm())
        .isCloseTo(
            CalibratedOnTheBoard.FAST_PPM + 1, within(2 * clock.standardUncertaintyPpm() + 2));
    FrontEndLag lag = profile.lag().orElseThrow();
    assertThat(lag.seconds())
        .isCloseTo(CalibratedOnTheBoard.LAG_SECONDS, within(2 * lag.standardUncertaintySeconds()));
    trips(profile.tripPoints().get(Channel.CENTRE_LOW), 9);
    trips(profile.tripPoints().get(Channel.CENTRE_HIGH), -14);
  }

  private static void trips(ComparatorTrips found, double offsetMillivolts) {
    double u = found.standardUncertaintyCounts();
    assertThat(found.offsetCounts())
        .isCloseTo(offsetMillivolts / MILLIVOLTS_PER_COUNT, within(2 * u));
    assertThat(found.hysteresisCounts()).isCloseTo(12 / MILLIVOLTS_PER_COUNT, within(4 * u));
  }
}
