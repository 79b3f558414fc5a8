package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.session.Phase;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;
import org.halflight.uncertainty.Basis;
import org.halflight.uncertainty.InputUncertainty;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.uncertainty.UncertaintySource;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.Test;

/**
 * A round hole whose radius grows evenly, 1 ms up and 1 ms down, right at 1/500, seen in light that
 * falls towards the edge of the pupil. The light is worked out here.
 */
class LightOverThePupilTest {
  private static final MarkedSpeed SPEED = MarkedSpeed.parse("1/500");
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final double RAMP = 1e-3;

  private static final RigKnowledge CALIBRATED =
      new RigKnowledge(
          InputUncertainty.normal(0.002, Basis.CALIBRATION),
          RigKnowledge.UNCALIBRATED.lamp(),
          InputUncertainty.normal(0.1e-6, Basis.CALIBRATION),
          InputUncertainty.normal(0.003, Basis.CALIBRATION),
          RigKnowledge.UNCALIBRATED.quantisationSeconds(),
          InputUncertainty.normal(30e-6, Basis.CALIBRATION),
          RigKnowledge.UNCALIBRATED.pupil());

  /** The part of the opening at which light 1 - a r^2 has brought so much: (2x^2 - ax^4)/(2-a). */
  private static double timeTo(double level, double fall) {
    return fall == 0
        ? Math.sqrt(level)
        : Math.sqrt((1 - Math.sqrt(1 - fall * level * (2 - fall))) / fall);
  }

  private static SpeedSummary seen(double fall, RigKnowledge rig) {
    List<Exposure.Timed> timed = new ArrayList<>();
    List<Double> errors = new ArrayList<>();
    for (double scatter : new double[] {-0.004, -0.002, 0, 0.002, 0.004}) {
      double open = SPEED.exactSeconds() * Math.pow(2, scatter) - 2 * RAMP / 3;
      List<Edge> edges = new ArrayList<>();
      for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
        double level =
            channel == Channel.CENTRE_LOW ? LevelPair.GAUSS.low() : LevelPair.GAUSS.high();
        double at = RAMP * timeTo(level, fall);
        edges.add(new Edge(channel, true, RATE.ticks(1e-3 + at)));
        edges.add(new Edge(channel, false, RATE.ticks(1e-3 + 2 * RAMP + open - at)));
      }
      edges.sort(Comparator.comparingLong(Edge::ticks));
      Exposure.Timed one =
          (Exposure.Timed)
              LeafExposureMethod.measure(new Firing(edges, List.of()), LevelPair.GAUSS, RATE);
      timed.add(one);
      errors.add(Math.log(one.effectiveSeconds() / SPEED.exactSeconds()) / Math.log(2));
    }
    return new SpeedSummary(
        SPEED,
        Reference.EXACT,
        Phase.AS_LEFT,
        new ReleaseCounts(5, Map.of()),
        Sample.of(errors),
        OptionalDouble.empty(),
        Tolerance.HALF,
        new HowMeasured(RampTravel.of(timed), new DecisionBasis(rig, DecisionRule.FIXED_NUMBER)));
  }

  @Test
  void edgesHalfAsBrightReadLongAndAMeasuredFallHoldsIt() {
    SpeedSummary measured = seen(0.5, CALIBRATED.withPanelTested(0.5));
    assertThat(measured.meanStops().orElseThrow()).isBetween(0.05, 0.06);
    // The truth is a right shutter. What is stated without the row, symmetrical, would not hold it.
    assertThat(measured.expandedIntervalStops().orElseThrow().contains(0)).isTrue();
    assertThat(measured.untestedPupilStops()).isEmpty();
    assertThat(Sentences.speed(measured)).noneMatch(said -> said.contains("over the lens"));
    RigKnowledge even = CALIBRATED.withPanelTested(0);
    assertThat(seen(0.5, even).expandedIntervalStops().orElseThrow().contains(0)).isFalse();
  }

  @Test
  void withoutATestTheWordsSayHowMuchIsAllowed() {
    SpeedSummary untested = seen(0.2, CALIBRATED);
    assertThat(untested.expandedIntervalStops().orElseThrow().contains(0)).isTrue();
    // 1.5 % of 2 ms of ramps at 1/512 s.
    assertThat(untested.untestedPupilStops().orElseThrow()).isBetween(0.021, 0.023);
    assertThat(Sentences.speed(untested))
        .contains("Light over the lens not tested: up to +0.02 stop.");
  }

  /** Nothing is said at a speed where it makes less than a hundredth of a stop. */
  @Test
  void slowSpeedsSayNothing() {
    SpeedSummary fast = seen(0, CALIBRATED);
    SpeedSummary slow =
        new SpeedSummary(
            MarkedSpeed.parse("1/60"),
            Reference.EXACT,
            Phase.AS_LEFT,
            new ReleaseCounts(5, Map.of()),
            fast.errors(),
            OptionalDouble.empty(),
            Tolerance.THIRD,
            new HowMeasured(fast.travel(), fast.decisionBasis()));
    assertThat(slow.untestedPupilStops()).isEmpty();
  }

  @Test
  void theIntervalReachesFurtherDownThanUp() {
    SpeedSummary speed = seen(0, CALIBRATED);
    Interval interval = speed.expandedIntervalStops().orElseThrow();
    double mean = speed.meanStops().orElseThrow();
    double row =
        speed.budget().orElseThrow().rows().stream()
            .filter(each -> each.part() == UncertaintySource.PUPIL)
            .findFirst()
            .orElseThrow()
            .standardStops();
    assertThat((mean - interval.low()) - (interval.high() - mean))
        .isCloseTo(row, org.assertj.core.api.Assertions.within(1e-9));
    assertThat(speed.guardBelowStops().orElseThrow() - speed.guardAboveStops().orElseThrow())
        .isCloseTo(row, org.assertj.core.api.Assertions.within(1e-9));
  }
}
