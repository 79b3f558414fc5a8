package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.Decided;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.EdgesAndCurve;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.ReboundSeen;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

/**
 * One release and what it came to. The raw edges stay with it, so that it can be worked out again.
 *
 * @param number counts the releases of the session from 1
 * @param key its identity
 * @param firing the raw edges
 * @param rate ticks a second of the board
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param setting what it is held to have been fired at: what was shown, unless the person has moved
 *     it; empty when nothing was shown
 * @param reference how the marking is read
 * @param phase of the run; empty before a run was begun
 * @param outcome what became of it
 * @param exposure the figures
 * @param levels the levels that the figures were worked out with; empty where full-open light was
 *     not known, and the thresholds were taken to stand where they should
 * @param oneLevel how a rig of one level saw it; empty with a rig of two
 * @param afterRest whether it was the first release of an as-found run
 * @param notes what else there is to know
 * @param curve its light curve, which comes a little later than the edges, where the rig takes one
 * @param profileUse the profile that the figures were worked out with
 */
public record FiringResult(
    int number,
    FiringKey key,
    Firing firing,
    TickRate rate,
    int run,
    Optional<DialSetting> setting,
    Reference reference,
    Optional<Phase> phase,
    Outcome outcome,
    LeafExposure exposure,
    Optional<LevelPair> levels,
    Optional<OneLevel> oneLevel,
    boolean afterRest,
    FiringNotes notes,
    Optional<FiringCurve> curve,
    ProfileUse profileUse) {
  /** A release that takes longer than this to bring light ran by the self-timer, most likely. */
  public static final double SELF_TIMER_SECONDS = 2;

  /** A firing that a rig of two levels saw, without a light curve and without a profile. */
  public FiringResult(
      int number,
      FiringKey key,
      Firing firing,
      TickRate rate,
      int run,
      Optional<DialSetting> setting,
      Reference reference,
      Optional<Phase> phase,
      Outcome outcome,
      LeafExposure exposure,
      Optional<LevelPair> levels,
      boolean afterRest,
      FiringNotes notes) {
    this(
        number,
        key,
        firing,
        rate,
        run,
        setting,
        reference,
        phase,
        outcome,
        exposure,
        levels,
        Optional.empty(),
        afterRest,
        notes,
        Optional.empty(),
        ProfileUse.NONE);
  }

  /** The edges that the figures are worked out from: where the light crossed, by the profile. */
  public Firing crossings() {
    return profileUse.crossings(firing, rate);
  }

  /** How fast the board really counts, by the profile. */
  public TickRate realRate() {
    return profileUse.rate(rate);
  }

  /** The marked speed that it is held to have been fired at. */
  public Optional<MarkedSpeed> shown() {
    return setting.flatMap(DialSetting::speed);
  }

  /** The check that it belongs to, where it was one. */
  public Optional<UntimedTest> untimedTest() {
    return setting.flatMap(DialSetting::untimedTest);
  }

  /** The reason the person gave for not counting it; empty when it counts. */
  public Optional<String> rejection() {
    return notes.rejection();
  }

  /**
   * Whether its time goes into the statistics of its speed. The first firing after rest never does:
   * it is shown by itself and not averaged away.
   */
  public boolean isGood() {
    return effectiveSeconds().isPresent() && rejection().isEmpty() && !afterRest;
  }

  /**
   * Whether it is one of the firings asked for, with a time or only with bounds; one that waits for
   * full light to be measured again, or for the rig to be checked, is too.
   */
  public boolean answersTheQuestion() {
    return mayHaveTime() && rejection().isEmpty() && !afterRest;
  }

  private boolean mayHaveTime() {
    return outcome == Outcome.TIMED || outcome == Outcome.NEVER_FULLY_OPEN;
  }

  /**
   * What its time is by, or what stands in the way of one; empty where edges without a light curve
   * gave none.
   */
  public Optional<DecidedBy> decidedBy() {
    return decided()
        .map(Decided::by)
        .or(() -> edgesSeconds().isPresent() ? Optional.of(DecidedBy.EDGES) : Optional.empty());
  }

  /** The effective time in seconds by what decides, where it was timed. */
  public OptionalDouble effectiveSeconds() {
    return decided().map(Decided::effectiveSeconds).orElseGet(this::edgesSeconds);
  }

  /**
   * What the way by which it was timed may itself be off by, plus or minus, in seconds; empty where
   * it was not timed.
   */
  public OptionalDouble methodSeconds() {
    if (effectiveSeconds().isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        decided()
            .map(Decided::methodSeconds)
            .orElseGet(() -> ((LeafExposure.Timed) exposure).methodSeconds()));
  }

  /** The effective time by the edges alone and the two-level rule, whatever decides. */
  public OptionalDouble edgesSeconds() {
    return exposure instanceof LeafExposure.Timed timed && outcome == Outcome.TIMED
        ? OptionalDouble.of(timed.effectiveSeconds())
        : OptionalDouble.empty();
  }

  /** What edges and light curve come to together, where both were seen. */
  public Optional<Decided> decided() {
    return mayHaveTime() ? curve.flatMap(FiringCurve::decided) : Optional.empty();
  }

  /** The time that the shown speed should have had, in seconds. */
  public OptionalDouble referenceSeconds() {
    return shown().isPresent()
        ? OptionalDouble.of(shown().get().seconds(reference))
        : OptionalDouble.empty();
  }

  /** The error in stops, above zero is slow, where it was timed at a shown speed. */
  public OptionalDouble errorStops() {
    OptionalDouble effective = effectiveSeconds();
    OptionalDouble wanted = referenceSeconds();
    return effective.isPresent() && wanted.isPresent()
        ? OptionalDouble.of(Stops.between(effective.getAsDouble(), wanted.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** From the press of the release to first light, in seconds, self-timer or not. */
  public OptionalDouble releaseDelaySeconds() {
    return notes.releaseDelaySeconds();
  }

  /** Whether the light came so late that the self-timer was on, most likely. */
  public boolean isBySelfTimer() {
    return releaseDelaySeconds().orElse(0) > SELF_TIMER_SECONDS;
  }

  /** The release delay for figures of it: without releases by the self-timer, on or forgotten. */
  public OptionalDouble countedDelaySeconds() {
    return isBySelfTimer() || untimedTest().equals(Optional.of(UntimedTest.SELF_TIMER))
        ? OptionalDouble.empty()
        : releaseDelaySeconds();
  }

  /** The raw light curve, where the rig took one. */
  public Optional<SampledLight> sampledLight() {
    return curve.map(FiringCurve::sampled);
  }

  /** What the light curve comes to, where there is one and the light was set. */
  public Optional<CurveExposure> curveExposure() {
    return curve.flatMap(FiringCurve::exposure);
  }

  /** What its light curve shows beside the main opening, where there is one that has a figure. */
  public Optional<ReboundSeen> reboundSeen() {
    return curve
        .filter(its -> its.exposure().flatMap(CurveExposure::measured).isPresent())
        .map(its -> ReboundSeen.of(its.sampled(), its.light().orElseThrow(), realRate()));
  }

  /** The same firing with its light curve, and with what that has to say about its exposure. */
  public FiringResult withCurve(FiringCurve its) {
    return withCurve(its, exposure, oneLevel, outcome);
  }

  private FiringResult withCurve(
      FiringCurve its, LeafExposure edges, Optional<OneLevel> seen, Outcome outcome) {
    Optional<EdgesAndCurve> both =
        its.exposure()
            .flatMap(CurveExposure::measured)
            .map(
                measured ->
                    new EdgesAndCurve(
                        edges,
                        seen.map(OneLevel::level),
                        levels.orElse(LevelPair.GAUSS),
                        its.sampled(),
                        its.light().orElseThrow(),
                        measured,
                        realRate()));
    Optional<Decided> decided =
        both.filter(known -> levels.isPresent())
            .flatMap(known -> known.decided(its.fullLightAfter()));
    return with(
        setting,
        outcome,
        both.map(known -> known.remarked(decided)).orElse(edges),
        seen,
        notes,
        Optional.of(its.with(decided)));
  }

  /**
   * What its edges come to by a method, with the levels and the profile that it was measured with.
   */
  public LeafExposure exposureBy(ExposureMethod method) {
    LevelPair assumed = levels.orElse(LevelPair.GAUSS);
    return oneLevel
        .map(seen -> seen.measure(crossings(), assumed, realRate(), firing.lastTicks()))
        .orElseGet(() -> method.measure(crossings(), assumed, realRate()));
  }

  /** What the rule for releases calls this one with other figures; light of cocking is none. */
  public Outcome outcomeWith(LeafExposure figures) {
    return OutcomeRule.of(firing, figures, rate, untimedTest(), notes.capOn());
  }

  /** The same firing with something else worked out from its edges. */
  public FiringResult workedOut(Outcome again, LeafExposure figures) {
    return with(setting, again, figures, notes);
  }

  /** The same firing and figures, with the profile that these were worked out with. */
  public FiringResult measuredWith(ProfileUse use) {
    return new FiringResult(
        number, key, firing, rate, run, setting, reference, phase, outcome, exposure, levels,
        oneLevel, afterRest, notes, curve, use);
  }

  /** The same firing, not counted for a reason. */
  public FiringResult rejected(String reason) {
    return with(setting, outcome, exposure, notes.rejected(reason));
  }

  /** The same firing, held to have been fired at another speed than was shown. */
  FiringResult moved(MarkedSpeed to) {
    Optional<MarkedSpeed> original = notes.movedFrom().or(this::shown);
    return with(
        Optional.of(new DialSetting.Speed(to)),
        outcome,
        exposure,
        notes.moved(original.filter(from -> !from.equals(to))));
  }

  /** The same firing, with its light in doubt. */
  FiringResult doubtful() {
    return with(setting, outcome, exposure, notes.doubtful());
  }

  /** The same firing of a small rig, worked out with what is known of the other level since. */
  FiringResult measuredAgain(OneLevel seen, Outcome again, LeafExposure figures) {
    return curve
        .map(its -> withCurve(its, figures, Optional.of(seen), again))
        .orElseGet(() -> with(setting, again, figures, Optional.of(seen), notes, curve));
  }

  /** The same release, whose edges turned out to be damaged only after it was settled. */
  public FiringResult damagedBy(Firing.Damage damage) {
    Firing damaged = firing.damagedBy(damage);
    return new FiringResult(
        number,
        key,
        damaged,
        rate,
        run,
        setting,
        reference,
        phase,
        outcome == Outcome.HELD_FOR_LIGHT || outcome == Outcome.LIGHT_WHILE_COCKING
            ? outcome
            : Outcome.UNUSABLE,
        new LeafExposure.Unusable(LeafExposure.Reason.DAMAGED, damaged.damage()),
        levels,
        oneLevel,
        afterRest,
        notes,
        curve,
        profileUse);
  }

  /** The same firing, open until the person closed it. */
  FiringResult stuckOpen(LeafExposure.StuckOpen stuck) {
    return with(setting, Outcome.STUCK_OPEN, stuck, notes);
  }

  private FiringResult with(
      Optional<DialSetting> setting, Outcome outcome, LeafExposure exposure, FiringNotes notes) {
    return with(setting, outcome, exposure, oneLevel, notes, curve);
  }

  private FiringResult with(
      Optional<DialSetting> setting,
      Outcome outcome,
      LeafExposure exposure,
      Optional<OneLevel> oneLevel,
      FiringNotes notes,
      Optional<FiringCurve> curve) {
    return new FiringResult(
        number,
        key,
        firing,
        rate,
        run,
        setting,
        reference,
        phase,
        outcome,
        exposure,
        levels,
        oneLevel,
        afterRest,
        notes,
        curve,
        profileUse);
  }
}
