package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.speeds.Tolerance;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.uncertainty.UncertaintyBudget;
import org.junit.jupiter.api.Test;

class UsualExposureTest {
  private static UncertaintyBudget budget(RigKnowledge rig, double scatter, int firings) {
    return UncertaintyBudget.of(2e-3, new RampTravel(2e-3, 0.2e-3, 24e-6), rig, scatter, firings);
  }

  private static Decision decide(double mean, RigKnowledge rig, double scatter, int firings) {
    return new UsualExposure(mean, budget(rig, scatter, firings), new BeyondLimits(firings, 0, 0))
        .decide(Tolerance.THIRD, DecisionRule.FIXED_NUMBER);
  }

  @Test
  void guardBandsOnBothSidesOfBothLimits() {
    // Five firings of 0.1 stop: t(4) = 2.132 times 0.0447 is 0.0953 stop.
    RigKnowledge none = RigKnowledge.NO_RIG;
    assertThat(decide(0.3, none, 0.1, 5).guardStops()).isCloseTo(0.0953, within(5e-5));
    assertThat(decide(0.23, none, 0.1, 5).verdict()).isEqualTo(Verdict.WITHIN);
    assertThat(decide(0.25, none, 0.1, 5).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(decide(0.42, none, 0.1, 5).verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(decide(0.44, none, 0.1, 5).verdict()).isEqualTo(Verdict.SLOW);
    assertThat(decide(-0.44, none, 0.1, 5).verdict()).isEqualTo(Verdict.FAST);
    assertThat(decide(-0.23, none, 0.1, 5).verdict()).isEqualTo(Verdict.WITHIN);
  }

  @Test
  void onTheLimitItIsAnEvenChance() {
    assertThat(decide(1 / 3.0, RigKnowledge.NO_RIG, 0.05, 5).conformity())
        .isCloseTo(0.5, within(1e-3));
  }

  @Test
  void theNumberOfFiringsThatWouldDecide() {
    Decision open = decide(0.25, RigKnowledge.NO_RIG, 0.1, 5);
    int more = open.furtherFirings().orElseThrow();
    UncertaintyBudget now = budget(RigKnowledge.NO_RIG, 0.1, 5);
    assertThat(0.25 + now.withFirings(5, 5 + more).guardAboveStops(0.05))
        .isLessThanOrEqualTo(1 / 3.0);
    assertThat(0.25 + now.withFirings(5, 4 + more).guardAboveStops(0.05)).isGreaterThan(1 / 3.0);
    assertThat(decide(0.2, RigKnowledge.NO_RIG, 0.1, 5).furtherFirings()).hasValue(0);
  }

  @Test
  void whereTheRigRulesNoNumberOfFiringsDecides() {
    // What is common to all firings is 0.018 stop here, a guard band of 0.03.
    assertThat(decide(0.32, RigKnowledge.UNCALIBRATED, 0.02, 5).furtherFirings()).isEmpty();
  }

  @Test
  void allLooksTogetherStayBelowTheRisk() {
    double sum = 0;
    for (int n = DecisionRule.FIRST_LOOK; n < 10_000; n++) {
      sum += DecisionRule.UNTIL_DECIDED.risk(n);
    }
    assertThat(sum).isLessThan(DecisionRule.RISK).isCloseTo(DecisionRule.RISK, within(1e-4));
    assertThat(
            new UsualExposure(0, budget(RigKnowledge.NO_RIG, 0.01, 4), new BeyondLimits(4, 0, 0))
                .verdict(Tolerance.THIRD, DecisionRule.UNTIL_DECIDED))
        .isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
  }
}
