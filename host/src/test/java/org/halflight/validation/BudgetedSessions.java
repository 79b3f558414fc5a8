package org.halflight.validation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;
import org.halflight.uncertainty.BladeTravel;
import org.halflight.uncertainty.Distribution;
import org.halflight.uncertainty.Doubt;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.Judging;
import org.halflight.verdict.SpeedSummary;

/**
 * Sessions with an invented shutter on an invented rig whose errors are drawn from what the budget
 * holds possible; edges are made, stamped and measured by the program's own method. Blades whose
 * area grows evenly, for which levels count most; the error of the rule of two levels is drawn.
 */
final class BudgetedSessions {
  private static final TickRate RATE = new TickRate(16_000_000);
  private static final long START = 1_000_000;

  private final RigKnowledge rig;
  private final SplittableRandom random;
  private final double level;
  private final double lamp;
  private final double delay;
  private final double hysteresis;
  private final double clock;
  private final double rule;

  /** A rig of its own, for one session. */
  BudgetedSessions(RigKnowledge rig, long seed) {
    this.rig = rig;
    this.random = new SplittableRandom(seed);
    level = draw(rig.levels());
    lamp = draw(rig.lamp());
    delay = draw(rig.delaySeconds());
    hysteresis = draw(rig.hysteresis());
    clock = draw(rig.clock());
    rule = 2 * random.nextDouble() - 1;
  }

  private double draw(Doubt doubt) {
    return doubt.distribution() == Distribution.RECTANGULAR
        ? doubt.bound() * (2 * random.nextDouble() - 1)
        : doubt.standard() * random.nextGaussian();
  }

  /** A speed with its firings so far; more can be fired. */
  final class AtSpeed {
    final double trueStops;
    private final MarkedSpeed speed;
    private final double scatterStops;
    private final double openingSeconds;
    private final double closingSeconds;
    private final List<Double> errors = new ArrayList<>();
    private final List<LeafExposure.Timed> timed = new ArrayList<>();

    AtSpeed(MarkedSpeed speed, double trueStops) {
      this.speed = speed;
      this.trueStops = trueStops;
      this.scatterStops = 0.01 + 0.05 * random.nextDouble();
      double ramp = (0.2 + 0.25 * random.nextDouble()) * Math.min(2.5e-3, speed.exactSeconds());
      this.openingSeconds = ramp * (0.9 + 0.2 * random.nextDouble());
      this.closingSeconds = ramp * (0.9 + 0.2 * random.nextDouble());
    }

    AtSpeed fire(int times) {
      for (int i = 0; i < times; i++) {
        double stops = trueStops + scatterStops * random.nextGaussian();
        double effective = speed.exactSeconds() * Stops.ratio(stops);
        LeafExposure.Timed one = measured(effective, openingSeconds, closingSeconds);
        timed.add(one);
        errors.add(Stops.between(one.effectiveSeconds(), speed.exactSeconds()));
      }
      return this;
    }

    SpeedSummary summary(DecisionRule decisionRule) {
      Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
      outcomes.put(Outcome.TIMED, errors.size());
      return new SpeedSummary(
          speed,
          Reference.EXACT,
          Phase.AS_LEFT,
          errors.size(),
          outcomes,
          0,
          0,
          Sample.of(errors),
          OptionalDouble.empty(),
          Tolerance.THIRD,
          BladeTravel.of(timed),
          new Judging(rig, decisionRule));
    }
  }

  private LeafExposure.Timed measured(double effective, double opening, double closing) {
    double open = effective - (opening + closing) / 2;
    // The rule's own bound, for ramps of this length; 0.7 % of them for round holes and their like.
    double late = delay + rule * RULE_SHARE * (opening + closing);
    double phase = random.nextDouble();
    List<Edge> edges = new ArrayList<>();
    for (Channel channel : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH)) {
      double wanted =
          channel == Channel.CENTRE_LOW ? LevelPair.GAUSS.low() : LevelPair.GAUSS.high();
      double at = wanted / (1 + lamp) + level;
      double rise = opening * (at + hysteresis / 2);
      double fall = opening + open + closing * (1 - at + hysteresis / 2) + late;
      int jitter = channel == Channel.CENTRE_HIGH ? 8 : 0;
      edges.add(new Edge(channel, true, ticks(rise, phase, jitter)));
      edges.add(new Edge(channel, false, ticks(fall, phase, jitter)));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return (LeafExposure.Timed)
        LeafExposureMethod.measure(new Firing(edges, List.of()), LevelPair.GAUSS, RATE);
  }

  private long ticks(double seconds, double phase, int jitter) {
    double exact = seconds * (1 + clock) * 16e6 + phase;
    return START + (long) Math.floor(exact) + (jitter > 0 ? random.nextInt(jitter + 1) : 0);
  }

  /** What the method gives as its bound, as a share of opening plus closing time. */
  static final double RULE_SHARE = ruleShare();

  private static double ruleShare() {
    BudgetedSessions plain = new BudgetedSessions();
    LeafExposure.Timed timed = plain.measured(10e-3, 1e-3, 1e-3);
    return timed.methodSeconds() / 2e-3;
  }

  private BudgetedSessions() {
    rig = RigKnowledge.NO_RIG;
    random = new SplittableRandom(1);
    level = 0;
    lamp = 0;
    delay = 0;
    hysteresis = 0;
    clock = 0;
    rule = 0;
  }
}
