package org.halflight.extratest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seeds;
import org.halflight.session.CameraCustoms;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.LineFit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A shutter that loses the same time at every commanded time: effective time {@code T = t - t0}
 * (Cassini ISS calibration, offset_info.txt, 2004-12-07; rows C1 to C3 of
 * fixtures/published/published_measurements.csv). The measured times are invented from the
 * published law, with ramps and scatter, and go the whole way of a firing; the line through
 * commanded and measured times gives the dead time back.
 */
class SpacecraftShutterTest {
  private static final double[] COMMANDED_MILLIS = {5, 10, 15, 20, 25, 35, 50, 80, 100, 120, 150};
  private static final double RAMP_SECONDS = 1.5e-3;
  private static final double SCATTER_SECONDS = 10e-6;
  private static final int EACH = 5;

  @ParameterizedTest
  @CsvSource({"2.75, 516", "2.67, 517"})
  void deadTimeComesBackFromCommandedAndMeasuredTimes(double deadMillis, long usual) {
    long seed = Seeds.usually(usual);
    InventedLight bench = new InventedLight();
    bench.begin(Phase.AS_LEFT, CameraCustoms.NONE, MarkedSpeed.parse("1/125"));
    Random random = new Random(seed);
    int all = COMMANDED_MILLIS.length * EACH;
    double[] commanded = new double[all];
    for (int i = 0; i < all; i++) {
      commanded[i] = COMMANDED_MILLIS[i / EACH] * 1e-3;
      double effective = commanded[i] - deadMillis * 1e-3 + SCATTER_SECONDS * random.nextGaussian();
      bench.open(effective, RAMP_SECONDS);
      bench.quiet();
    }
    List<FiringResult> firings = bench.session.results();
    double[] measured =
        firings.stream().mapToDouble(f -> f.effectiveSeconds().getAsDouble()).toArray();

    LineFit line = LineFit.of(commanded, measured);

    assertThat(line.slope()).as("seed " + seed).isCloseTo(1, within(4 * line.slopeSd()));
    assertThat(-line.intercept() * 1e3)
        .as("seed " + seed)
        .isCloseTo(deadMillis, within(4e3 * line.interceptSd()));
    assertThat(line.interceptSd()).isLessThan(5e-6);
  }
}
