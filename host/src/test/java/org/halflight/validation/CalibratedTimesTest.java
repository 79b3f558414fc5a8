package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.RigProfile;
import org.junit.jupiter.api.Test;

/** Small numbers of the figures in docs/validation.md; all simulated. */
class CalibratedTimesTest {
  @Test
  void calibrationTakesOutClockDelaysAndTripPoints() {
    for (CalibratedTimes.Row row : new CalibratedTimes().rows()) {
      assertThat(row.before()).as(row.toString()).isGreaterThan(0.003);
      // The clock alone has drifted by 30 ppm since its pings.
      assertThat(Math.abs(row.after())).as(row.toString()).isLessThan(2e-4);
    }
  }

  @Test
  void theProfileFindsWhatWasPutIn() {
    RigProfile profile = new CalibratedTimes().profile(0);
    FrontEndLag lag = profile.lag().orElseThrow();
    assertThat(lag.seconds())
        .isCloseTo(CalibratedTimes.LAG, within(2 * lag.standardUncertaintySeconds()));
    assertThat(lag.standardUncertaintySeconds()).isLessThan(0.1e-6);
    // The clock gains 2 ppm while it is held against the host.
    assertThat(profile.clock().orElseThrow().fastPpm()).isCloseTo(3451, within(2.0));
  }

  /** The order of the three lines; their figures for 400 runs are on the page. */
  @Test
  void theHullIsBestForExponentialDelays() {
    double[] errors = CalibratedTimes.slopeErrors("exponential", 60, 40);
    assertThat(errors[0]).isLessThan(0.7).isLessThan(errors[1]);
    assertThat(errors[1]).isLessThan(errors[2]);
  }

  @Test
  void thePageHoldsTheseFigures() throws Exception {
    List<String> page = Files.readAllLines(Path.of("docs/validation.md"));
    List<String> rows =
        CalibratedTimes.times().stream().filter(line -> line.startsWith("| 1/")).toList();
    assertThat(rows).hasSize(9);
    assertThat(page).containsAll(rows);
  }
}
