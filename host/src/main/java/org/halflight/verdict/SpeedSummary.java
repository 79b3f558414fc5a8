package org.halflight.verdict;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.halflight.session.AlikeFirings;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Figure;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.Basis;
import org.halflight.uncertainty.BudgetRow;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.uncertainty.UncertaintyBudget;
import org.halflight.uncertainty.UncertaintySource;

/**
 * What the firings of one marked speed in one phase come to.
 *
 * @param speed the marked speed
 * @param reference how its marking is read
 * @param phase of the firings
 * @param releases how many came to what
 * @param errors of the timed firings, in stops, in order of firing, without the first after rest
 *     and those that special conditions keep apart
 * @param afterRestStops error of the first firing after rest, where this speed had it and it was
 *     timed
 * @param tolerance that it is held against
 * @param how the times were measured
 * @param budget all that the mean is uncertain by; empty below two timed firings
 * @param curtains what the firings say of curtains; empty for blades, and where only the centre was
 *     timed
 */
public record SpeedSummary(
    MarkedSpeed speed,
    Reference reference,
    Phase phase,
    ReleaseCounts releases,
    Sample errors,
    OptionalDouble afterRestStops,
    Tolerance tolerance,
    HowMeasured how,
    Optional<UncertaintyBudget> budget,
    Optional<CurtainSpeed> curtains) {
  /** Confidence of every interval that is shown. */
  public static final double LEVEL = 0.95;

  /** What no speed that is called within has among its releases. */
  public static final List<Outcome> FAILURES =
      List.of(Outcome.STUCK_OPEN, Outcome.DID_NOT_OPEN, Outcome.DOUBLE);

  private static final Set<Verdict> DECIDED = Set.of(Verdict.WITHIN, Verdict.SLOW, Verdict.FAST);

  /**
   * Scatter (standard deviation, in stops) from which a speed is called uneven: common practice, no
   * source.
   */
  public static final double UNEVEN_STOPS = 0.12;

  /**
   * Untested light over the lens is said beside a figure that may read long by this or more, in
   * stops: what shows in its second decimal.
   */
  public static final double LEAST_PUPIL_STOPS = 0.01;

  /** Its budget is drawn up here, once. */
  public SpeedSummary(
      MarkedSpeed speed,
      Reference reference,
      Phase phase,
      ReleaseCounts releases,
      Sample errors,
      OptionalDouble afterRestStops,
      Tolerance tolerance,
      HowMeasured how) {
    this(
        speed,
        reference,
        phase,
        releases,
        errors,
        afterRestStops,
        tolerance,
        how,
        how.budget(errors, speed.seconds(reference)),
        Optional.empty());
  }

  /** Sums up the firings of one speed, calibrated where all of them were measured so. */
  public static SpeedSummary of(List<FiringResult> firings, Tolerance tolerance) {
    return of(firings, tolerance, DecisionBasis.UNCALIBRATED);
  }

  /**
   * Sums up the firings of one speed.
   *
   * @param firings all of one marked speed and one phase, at least one, in order of firing
   * @param asked what is known of a rig that was not calibrated, and how it is decided; where all
   *     good firings were measured with one profile and count as calibrated, what that says holds,
   *     and where all were corrected by the session's own pings, what these say of the clock
   */
  public static SpeedSummary of(
      List<FiringResult> firings, Tolerance tolerance, DecisionBasis asked) {
    return of(firings, tolerance, asked, ReboundOfRun.of(firings));
  }

  /**
   * Sums up firings as their run was set up, with the wide allowances for any rig: what is said
   * while firings still come, so that a replay finds the same.
   *
   * @param firings all of one marked speed of the run, at least one, in order of firing
   */
  public static SpeedSummary underWay(List<FiringResult> firings, RunSetup setup) {
    return of(
        firings,
        setup.tolerance(firings.get(0).shown().orElseThrow()),
        DecisionBasis.of(setup, RigKnowledge.UNCALIBRATED));
  }

  /**
   * Sums up the firings of one speed as above.
   *
   * @param run what the firings of all speeds of its run showed of a rebound
   */
  public static SpeedSummary of(
      List<FiringResult> firings, Tolerance tolerance, DecisionBasis asked, ReboundOfRun run) {
    FiringResult any = firings.get(0);
    List<FiringResult> alike = AlikeFirings.of(firings);
    List<FiringResult> good = alike.stream().filter(FiringResult::isGood).toList();
    DecisionBasis basis = asked.withRigOf(good);
    ReboundAtSpeed rebound = ReboundAtSpeed.of(any.shown().orElseThrow(), good, run);
    double[] errors = good.stream().mapToDouble(rebound::errorStops).toArray();
    OptionalDouble afterRest =
        firings.stream()
            .filter(FiringResult::isTry)
            .filter(f -> f.afterRest() && f.errorStops().isPresent())
            .mapToDouble(rebound::errorStops)
            .findFirst();
    SpeedSummary summary =
        new SpeedSummary(
            any.shown().orElseThrow(),
            any.reference(),
            any.phase().orElseThrow(),
            ReleaseCounts.of(
                firings, UnderConditions.of(firings, rebound::errorStops), rebound::errorStops),
            Sample.of(errors),
            afterRest,
            tolerance,
            new HowMeasured(
                HowMeasured.travel(good).map(its -> its.withOutsideBound(rebound.boundSeconds())),
                good.stream().anyMatch(f -> f.levels().isEmpty()) ? basis.withLightUnset() : basis,
                rebound,
                TimingBasis.of(alike)));
    List<CurtainShot> shots =
        alike.stream().flatMap(each -> CurtainShot.of(each).stream()).toList();
    return shots.isEmpty() ? summary : summary.with(Optional.of(CurtainSpeed.of(shots)));
  }

  private SpeedSummary with(Optional<CurtainSpeed> seen) {
    return new SpeedSummary(
        speed, reference, phase, releases, errors, afterRestStops, tolerance, how, budget, seen);
  }

  /** Releases that say something about the shutter, the rejected ones not counted. */
  public int tries() {
    return releases.tries();
  }

  /** How many of them came to what. */
  public Map<Outcome, Integer> outcomes() {
    return releases.outcomes();
  }

  /** How many the person did not count. */
  public int rejected() {
    return releases.rejected().size();
  }

  /** How many the rig could not record well. */
  public int unusable() {
    return releases.unusable();
  }

  /** The special conditions of its firings: those of the mean, and what is kept apart from it. */
  public UnderConditions conditions() {
    return releases.conditions();
  }

  /** In how many firings of the mean the flap or mirror of the body let light through. */
  public int flapLight() {
    return releases.flapLight();
  }

  /** The travel of the blades, where it was seen. */
  public Optional<RampTravel> travel() {
    return how.travel();
  }

  /** What is known of the rig, and how it is decided. */
  public DecisionBasis decisionBasis() {
    return how.decisionBasis();
  }

  /** The light part by part, and whether anybody looked for a rebound. */
  public ReboundAtSpeed rebound() {
    return how.rebound();
  }

  /** What the times are by. */
  public TimingBasis timingBasis() {
    return how.timingBasis();
  }

  /** How many firings came to an outcome. */
  public int count(Outcome outcome) {
    return outcomes().getOrDefault(outcome, 0);
  }

  /** The time that the marking stands for, in seconds. */
  public double referenceSeconds() {
    return speed.seconds(reference);
  }

  /** Mean error in stops. */
  public OptionalDouble meanStops() {
    return value(errors.mean());
  }

  /** The effective time that lies the mean error away from the reference, in seconds. */
  public OptionalDouble meanSeconds() {
    OptionalDouble mean = meanStops();
    return mean.isPresent()
        ? OptionalDouble.of(referenceSeconds() * Math.pow(2, mean.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** Median error in stops. */
  public OptionalDouble medianStops() {
    return value(errors.median());
  }

  /** Scatter: standard deviation of one firing in stops. */
  public OptionalDouble scatterStops() {
    return value(errors.sd());
  }

  /** Scatter by the median deviation, in stops. */
  public OptionalDouble robustScatterStops() {
    return value(errors.robustSpread());
  }

  /**
   * The interval of the mean error in stops, of confidence {@link #LEVEL}, by the scatter of the
   * firings alone: what two runs on one rig are held against each other with.
   */
  public Optional<Interval> meanIntervalStops() {
    return errors.meanInterval(LEVEL).known();
  }

  /** Half the width of the interval of the mean with the rig in it, in stops. */
  public OptionalDouble expandedStops() {
    return ofBudget(b -> b.expandedStops(LEVEL));
  }

  /**
   * The interval of the mean error in stops, of confidence {@link #LEVEL}, with all that the rig
   * may be off by. It reaches further down than up from the mean where something makes times read
   * long only.
   */
  public Optional<Interval> expandedIntervalStops() {
    return budget.map(
        budget -> {
          double middle = meanStops().orElseThrow() + budget.middleStops();
          double half = budget.expandedStops(LEVEL);
          return new Interval(middle - half, middle + half, LEVEL);
        });
  }

  /** The wider guard band of both limits, in stops; empty below two timed firings. */
  public OptionalDouble guardStops() {
    return ofBudget(b -> decider(b).guardStops(decisionBasis().rule()));
  }

  /** How far above the mean the truth may lie, at the risk of the decision, in stops. */
  public OptionalDouble guardAboveStops() {
    return ofBudget(b -> decider(b).guardAboveStops(decisionBasis().rule()));
  }

  /** How far below the mean it may lie, likewise. */
  public OptionalDouble guardBelowStops() {
    return ofBudget(b -> decider(b).guardBelowStops(decisionBasis().rule()));
  }

  private OptionalDouble ofBudget(ToDoubleFunction<UncertaintyBudget> figure) {
    return budget.stream().mapToDouble(figure).findFirst();
  }

  /**
   * By what times at this speed may read long because nobody tested the light over the lens, in
   * stops; empty where somebody did, and where it is too little to be said beside the figure.
   */
  public OptionalDouble untestedPupilStops() {
    return budget.stream()
        .flatMap(budget -> budget.rows().stream())
        .filter(
            row -> row.part() == UncertaintySource.PUPIL && row.doubt().basis() == Basis.ALLOWANCE)
        .mapToDouble(BudgetRow::standardStops)
        .filter(stops -> stops >= LEAST_PUPIL_STOPS)
        .findFirst();
  }

  /**
   * The decision on what the verdict is about; empty below two timed firings. With fewer firings
   * than were planned it says so and how many are missing, whatever they would come to.
   */
  public Optional<Decision> decision() {
    return decisionSoFar()
        .map(
            its ->
                new Decision(
                    reported(its.verdict()),
                    its.guardStops(),
                    its.conformity(),
                    furtherFirings(its)));
  }

  /**
   * The decision on the timed firings by themselves, whatever was planned and whatever failed:
   * empty below two of them.
   */
  public Optional<Decision> decisionSoFar() {
    return budget.map(b -> decider(b).decide(tolerance, decisionBasis().rule()));
  }

  private OptionalInt furtherFirings(Decision decision) {
    if (timingBasis().instead().isPresent()) {
      return OptionalInt.empty();
    }
    return decisionBasis().isShort(errors.n())
        ? OptionalInt.of(decisionBasis().planned().getAsInt() - errors.n())
        : decision.furtherFirings();
  }

  /** The verdict to report where the timed firings come to this one. */
  private Verdict reported(Verdict ofTimed) {
    if (timingBasis().instead().isPresent()) {
      return timingBasis().instead().get();
    }
    if (decisionBasis().isShort(errors.n())) {
      return Verdict.FEWER_THAN_PLANNED;
    }
    return ofTimed == Verdict.WITHIN && failed() > 0 ? Verdict.SOME_FAILED : ofTimed;
  }

  /** Releases that hung, opened twice or did not open: none of these is ever within. */
  public int failed() {
    return FAILURES.stream().mapToInt(this::count).sum();
  }

  /** How many of the firings lie beyond the limits. */
  public BeyondLimits beyond() {
    return BeyondLimits.of(errors, tolerance);
  }

  /** The releases that are not like the others; empty where nothing was timed. */
  public Optional<OddOnes> oddOnes() {
    return medianStops().isPresent() ? Optional.of(OddOnes.of(this)) : Optional.empty();
  }

  private Decider decider(UncertaintyBudget budget) {
    double mean = meanStops().orElseThrow();
    return switch (decisionBasis().measurand()) {
      case MEAN_OF_SETTING -> new UsualExposure(mean, budget, beyond());
      case ONE_EXPOSURE -> OneExposure.of(mean, scatterStops().orElseThrow(), errors.n(), budget);
    };
  }

  /**
   * Whether it is called within though nobody looked for a rebound that may add to it. Slower
   * speeds hardly notice one, and of curtains the outer sensors see it.
   */
  public boolean isReboundOpen() {
    return rebound().look() == ReboundAtSpeed.Look.NOT_LOOKED_AT
        && curtains.isEmpty()
        && ReboundOfRun.isAskedFor(speed)
        && verdict() == Verdict.WITHIN;
  }

  /**
   * The same as it may be compared with another run. A rebound that only light curves saw counts
   * where both runs looked; else both go by their edges, and a look is no change of the shutter.
   * The firing of a quick look by whose error its speed was picked to be fired again is left out:
   * chance has a hand in which error is the largest.
   */
  SpeedSummary comparableWith(SpeedSummary other) {
    boolean bothLooked =
        rebound().look() != ReboundAtSpeed.Look.NOT_LOOKED_AT
            && other.rebound().look() != ReboundAtSpeed.Look.NOT_LOOKED_AT;
    Sample seenAlike = bothLooked || !rebound().isByCurve() ? errors : rebound().errorsByEdges();
    boolean picked =
        decisionBasis().rule() == DecisionRule.QUICK
            && seenAlike.n() > 1
            && afterRestStops.isEmpty();
    Sample compared = picked ? seenAlike.withoutFirst() : seenAlike;
    return compared == errors
        ? this
        : new SpeedSummary(
                speed, reference, phase, releases, compared, afterRestStops, tolerance, how)
            .with(curtains);
  }

  /** Whether the firings scatter more than a sound shutter's do. */
  public boolean isUneven() {
    return scatterStops().orElse(0) > UNEVEN_STOPS;
  }

  /** Where what the verdict is about lies against the tolerance. */
  public Verdict verdict() {
    return timingBasis()
        .instead()
        .or(() -> budget.map(b -> reported(decider(b).verdict(tolerance, decisionBasis().rule()))))
        .orElse(Verdict.TOO_FEW);
  }

  /**
   * Whether the mean by itself is decided, which ends the firing of a speed that is fired until
   * then. Counts are left out: what earlier versions took for the end has to stay one.
   */
  public boolean isMeanDecided() {
    return verdictOfMean().filter(DECIDED::contains).isPresent();
  }

  /** What the mean says by itself, without counts; empty below two timed firings. */
  public Optional<Verdict> verdictOfMean() {
    return budget.map(b -> decider(b).ofTheMean(tolerance, decisionBasis().rule()));
  }

  private static OptionalDouble value(Figure<Double> figure) {
    return figure.known().stream().mapToDouble(Double::doubleValue).findFirst();
  }
}
