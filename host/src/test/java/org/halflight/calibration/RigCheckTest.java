package org.halflight.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.halflight.calibration.RigCheck.Signal;
import org.halflight.fixtures.PublishedTable;
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
    assertThat(limits.upper()).isCloseTo(55.8041, within(1e-4));
    assertThat(limits.lower()).isCloseTo(45.8159, within(1e-4));
    assertThat(RigCheck.of(limits, rates).signals()).doesNotContain(Signal.ONE_BEYOND_THREE);
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
    assertThat(50 + RigCheck.averageReach(limits)).isCloseTo(52.5884, within(1e-4));
    assertThat(50 - RigCheck.averageReach(limits)).isCloseTo(47.4115, within(1e-4));
    assertThat(check.signals()).doesNotContain(Signal.AVERAGE_BEYOND_LIMITS);
  }

  @Test
  void eachRuleHasItsSignal() {
    // Western Electric 1956, the four rules, by hand.
    assertThat(RigCheck.of(UNIT, 0, 0.3, -3.1, 0.2, 0).signals())
        .containsExactly(Signal.ONE_BEYOND_THREE);
    assertThat(RigCheck.of(UNIT, 0, 2.1, 0.1, 2.2, -0.5).signals())
        .containsExactly(Signal.TWO_OF_THREE_BEYOND_TWO);
    assertThat(RigCheck.of(UNIT, 1.1, 1.2, -0.1, 1.1, 1.2).signals())
        .containsExactly(Signal.FOUR_OF_FIVE_BEYOND_ONE);
    assertThat(RigCheck.of(UNIT, .1, .2, .1, .3, .1, .2, .4, .1).signals())
        .containsExactly(Signal.EIGHT_ON_ONE_SIDE);
    assertThat(RigCheck.of(UNIT, 1.9, 1.9, 1.9, 1.9, 1.9).signals())
        .contains(Signal.AVERAGE_BEYOND_LIMITS);
    assertThat(RigCheck.of(UNIT, 2.1, -2.2, 0.1, 1.2, -1.2, 0.3, -0.1).inControl()).isTrue();
  }
}
