package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.fixtures.Seed;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RigKnowledge;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class OneExposureTest {
  private static final DecisionRule FIXED = DecisionRule.FIXED_NUMBER;

  /**
   * For five values, 90 % of them and 95 % confidence the classical tables print 4.275, by the
   * approximation of Wald and Wolfowitz (from memory); the exact factor is held against printed
   * ones in ToleranceFactorTest.
   */
  @Test
  void theMeanMustStayAFactorOfTheScatterAwayFromALimit() {
    OneExposure shutter = new OneExposure(0, 0.02, 5, 0);
    assertThat(shutter.guardStops(FIXED) / 0.02).isCloseTo(4.275, within(0.03));
    assertThat(new OneExposure(0.24, 0.02, 5, 0).verdict(Tolerance.THIRD, FIXED))
        .isEqualTo(Verdict.WITHIN);
    assertThat(new OneExposure(0.26, 0.02, 5, 0).verdict(Tolerance.THIRD, FIXED))
        .isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    assertThat(new OneExposure(-0.40, 0.02, 5, 0).verdict(Tolerance.THIRD, FIXED))
        .isEqualTo(Verdict.FAST);
  }

  @Test
  void aMeanThatIsRightIsNotEnoughWhereSingleExposuresScatter() {
    OneExposure erratic = new OneExposure(0.05, 0.5, 20, 0);
    assertThat(erratic.verdict(Tolerance.THIRD, FIXED)).isNotEqualTo(Verdict.WITHIN);
    Decision decision = erratic.decide(Tolerance.THIRD, FIXED);
    assertThat(decision.conformity()).isLessThan(0.6);
    // What the rig may be off by is on top, with one exposure as with the mean.
    assertThat(new OneExposure(0, 0.02, 5, 0.05).guardStops(FIXED))
        .isCloseTo(new OneExposure(0, 0.02, 5, 0).guardStops(FIXED) + 1.645 * 0.05, within(1e-4));
  }

  /** Then the rig alone is unsure: half of the cases lie beyond a limit that the mean stands on. */
  @Test
  void firingsThatAgreeToTheTickLeaveOnlyTheRig() {
    OneExposure agree = new OneExposure(1 / 3.0, 1e-9, 5, 0.01);
    assertThat(agree.decide(Tolerance.THIRD, FIXED).conformity()).isCloseTo(0.5, within(1e-6));
  }

  @Test
  void theFurtherFiringsWouldDecide() {
    OneExposure open = new OneExposure(0.2, 0.05, 5, 0);
    Decision decision = open.decide(Tolerance.THIRD, FIXED);
    assertThat(decision.verdict()).isEqualTo(Verdict.TOO_CLOSE_TO_CALL);
    int then = 5 + decision.furtherFirings().orElseThrow();
    assertThat(new OneExposure(0.2, 0.05, then, 0).verdict(Tolerance.THIRD, FIXED))
        .isEqualTo(Verdict.WITHIN);
  }

  /** Of shutters with just 90 % of their exposures inside, at most 5 % are called within. */
  @Test
  @Tag("long")
  void theRiskOfCallingABadShutterWithinIsAsStated(@Seed(11) long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    // A third of a stop is 1.645 standard deviations away on both sides.
    double sd = (1 / 3.0) / 1.6449;
    int within = 0;
    int outside = 0;
    int shutters = 4000;
    for (int i = 0; i < shutters; i++) {
      double[] errors =
          random.doubles(10).map(u -> sd * normal.inverseCumulativeProbability(u)).toArray();
      Sample sample = Sample.of(errors);
      Verdict verdict =
          new OneExposure(sample.mean().get(), sample.sd().get(), 10, 0)
              .verdict(Tolerance.THIRD, FIXED);
      within += verdict == Verdict.WITHIN ? 1 : 0;
      outside += verdict == Verdict.SLOW || verdict == Verdict.FAST ? 1 : 0;
    }
    // Four standard deviations of a binomial share of 5 % in 4,000: 1.4 %.
    assertThat(within / (double) shutters).isLessThan(0.064);
    assertThat(outside / (double) shutters).isLessThan(0.064);
  }

  @Test
  void fewerFiringsThanPlannedAreNoVerdictOnEither() {
    for (Measurand measurand : Measurand.values()) {
      SpeedSummary speed = summary(measurand, OptionalInt.of(5), 0.01, 0.02, 0.0);
      assertThat(speed.verdict()).isEqualTo(Verdict.FEWER_THAN_PLANNED);
      assertThat(speed.decision().orElseThrow().verdict()).isEqualTo(Verdict.FEWER_THAN_PLANNED);
      assertThat(speed.decision().orElseThrow().furtherFirings()).hasValue(2);
      assertThat(summary(measurand, OptionalInt.of(3), 0.01, 0.02, 0.0).verdict())
          .isEqualTo(Verdict.WITHIN);
      assertThat(summary(measurand, OptionalInt.empty(), 0.01, 0.02, 0.0).verdict())
          .isEqualTo(Verdict.WITHIN);
    }
  }

  private static SpeedSummary summary(Measurand measurand, OptionalInt planned, double... errors) {
    return new SpeedSummary(
        MarkedSpeed.parse("1/60"),
        Reference.EXACT,
        Phase.AS_LEFT,
        new ReleaseCounts(errors.length, Map.of()),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.THIRD,
        new HowMeasured(
            Optional.empty(), new DecisionBasis(RigKnowledge.NO_RIG, FIXED, measurand, planned)));
  }
}
