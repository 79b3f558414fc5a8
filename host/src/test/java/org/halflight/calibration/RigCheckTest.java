package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.halflight.calibration.RigCheck.Signal;
import org.halflight.fixtures.PublishedTable;
import org.halflight.fixtures.Seed;
import org.junit.jupiter.api.Test;

class RigCheckTest {
  private static final ControlLimits UNIT = new ControlLimits(0, 1);

  /** NIST/SEMATECH e-Handbook 6.3.2.2: flow rates of ten batches. */
  @Test
  void individualsChartMeetsTheHandbook() {
    double[] rates =
        PublishedTable.rows("nist_individuals_flowrate.csv").stream()
            .mapToDouble(row -> Double.parseDouble(row.get("y")))
            .toArray();
    ControlLimits limits = ControlLimits.of(rates);
    assertThat(limits.centre()).isCloseTo(50.81, within(1e-9));
    assertThat(limits.at(3)).isCloseTo(55.8041, within(1e-4));
    assertThat(limits.at(-3)).isCloseTo(45.8159, within(1e-4));
    assertThat(RigCheck.of(limits, rates).signals()).doesNotContain(Signal.ONE_BEYOND_LIMITS);
  }

  /**
   * NIST/SEMATECH e-Handbook 6.3.2.4: 20 values, centre 50, standard deviation 2.0539, no point of
   * the moving average beyond its limits 47.4115 and 52.5884. The page cuts a factor to 0.4201.
   */
  @Test
  void movingAverageMeetsTheHandbook() {
    List<Map<String, String>> rows = PublishedTable.rows("nist_ewma.csv");
    double[] values = rows.stream().mapToDouble(row -> Double.parseDouble(row.get("y"))).toArray();
    ControlLimits limits = new ControlLimits(50, 2.0539);
    RigCheck check = RigCheck.of(limits, values);

    for (int i = 0; i < values.length; i++) {
      assertThat(check.points().get(i).average())
          .isCloseTo(Double.parseDouble(rows.get(i).get("ewma_printed")), within(0.00501));
    }
    assertThat(50 + 3 * RigCheck.averageSd(limits)).isCloseTo(52.5884, within(1e-4));
    assertThat(50 - 3 * RigCheck.averageSd(limits)).isCloseTo(47.4115, within(1e-4));
    assertThat(check.signals()).doesNotContain(Signal.AVERAGE_BEYOND_LIMITS);
  }

  @Test
  void eachRuleHasItsSignal() {
    assertThat(RigCheck.of(UNIT, 0, 0.3, -3.9, 0.2, 0, 0.1, 0, 0.2, 0, 0.1).signals())
        .containsExactly(Signal.ONE_BEYOND_LIMITS);
    assertThat(RigCheck.of(UNIT, .9, 1, .8, 1.1, .9, 1, .9, 1, .9, 1).signals())
        .containsExactly(Signal.MEAN_BEYOND_LIMITS);
    assertThat(RigCheck.of(UNIT, -1, -1, -1, -1, -1, 2, 2, 2, 2, 2).signals())
        .containsExactly(Signal.AVERAGE_BEYOND_LIMITS);
    assertThat(RigCheck.of(UNIT, 2.1, -2.2, 0.1, 1.2, -1.2, 0.3, -0.1).inControl()).isTrue();
  }

  /** The rules of Western Electric (1956) signalled in 7.8 % of them. */
  @Test
  void aSoundCheckOfTenPulsesHardlyEverSignals(@Seed(15) long seed) {
    assertThat(signalled(seed, 40_000, 0, 0)).isLessThanOrEqualTo(0.01);
  }

  /**
   * What is found in nine of ten checks: all pulses shifted by 1.35 standard deviations, the second
   * half by 2.25, one by 5.1. By the old rules it was 1.25, 1.8 and 4.2.
   */
  @Test
  void aRigThatIsOffIsStillFound(@Seed(15) long seed) {
    assertThat(signalled(seed, 5_000, 1.35, 0)).isGreaterThan(0.9);
    assertThat(signalled(seed, 5_000, 2.25, 5)).isGreaterThan(0.9);
    assertThat(signalled(seed, 5_000, 5.1, 9)).isGreaterThan(0.9);
  }

  /** The share of checks of ten pulses that signal where those from one on are shifted. */
  private static double signalled(long seed, int checks, double shift, int from) {
    Random random = new Random(seed);
    int signals = 0;
    for (int i = 0; i < checks; i++) {
      double[] pulses = new double[10];
      for (int k = 0; k < pulses.length; k++) {
        pulses[k] = random.nextGaussian() + (k >= from ? shift : 0);
      }
      signals += RigCheck.of(UNIT, pulses).inControl() ? 0 : 1;
    }
    return (double) signals / checks;
  }
}
