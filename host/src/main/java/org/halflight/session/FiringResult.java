package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.Decided;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.EdgesAndCurve;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.FixedLevel;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.ReboundSeen;
import org.halflight.signal.Edge;
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
 * @param place where in the work it belongs
 * @param outcome what became of it
 * @param exposure the figures
 * @param measuredWith what they were worked out with
 * @param notes what else there is to know
 * @param curve its light curve, which comes a little later than the edges, where the rig takes one
 */
public record FiringResult(
    int number,
    FiringKey key,
    Firing firing,
    TickRate rate,
    FiringPlace place,
    Outcome outcome,
    Exposure exposure,
    MeasuredWith measuredWith,
    FiringNotes notes,
    Optional<FiringCurve> curve) {
  /** A release that takes longer than this to bring light ran by the self-timer, most likely. */
  public static final double SELF_TIMER_SECONDS = 2;

  /** With more light before it than this share of the main opening, edges alone decide. */
  private static final double MOST_FLAP_SHARE = 0.5;

  /** The run that it belongs to, from 1; 0 before one was begun. */
  public int run() {
    return place.run();
  }

  /** What it is held to have been fired at; empty when nothing was shown. */
  public Optional<DialSetting> setting() {
    return place.setting();
  }

  /** How the marking is read. */
  public Reference reference() {
    return place.reference();
  }

  /** The phase of its run; empty before a run was begun. */
  public Optional<Phase> phase() {
    return place.phase();
  }

  /**
   * Whether it was the first after rest: the first release of an as-found run, unless the person
   * said otherwise of it.
   */
  public boolean afterRest() {
    return conditions()
        .of(FiringCondition.Kind.REST)
        .map(said -> said == FiringCondition.FIRST_AFTER_REST)
        .orElse(place.afterRest());
  }

  /** The special conditions that the person said it was made under. */
  public FiringConditions conditions() {
    return notes.conditions();
  }

  /** The levels that it was measured with; empty where full-open light was not known. */
  public Optional<LevelPair> levels() {
    return measuredWith.levels();
  }

  /** How a rig of one level saw it; empty with a rig of two. */
  public Optional<OneLevel> oneLevel() {
    return measuredWith.oneLevel();
  }

  /** The profile that it was measured with. */
  public ProfileUse profileUse() {
    return measuredWith.profileUse();
  }

  /** The edges that the figures are worked out from: where the light crossed, by the profile. */
  public Firing crossings() {
    if (isByCurveAlone()) {
      return FixedLevel.crossings(
          firing, sampledLight().orElseThrow(), curve.orElseThrow().light().orElseThrow(), rate);
    }
    return profileUse().crossings(firing, rate);
  }

  /** Whether a fixed level found it, and its light curve shows both levels. */
  private boolean isByCurveAlone() {
    return oneLevel().filter(OneLevel::isFixed).isPresent()
        && curveExposure().flatMap(CurveExposure::measured).isPresent();
  }

  /** How fast the board really counts, by the profile. */
  public TickRate realRate() {
    return profileUse().rate(rate);
  }

  /** The marked speed that it is held to have been fired at. */
  public Optional<MarkedSpeed> shown() {
    return setting().flatMap(DialSetting::speed);
  }

  /** The check that it belongs to, where it was one. */
  public Optional<UntimedTest> untimedTest() {
    return setting().flatMap(DialSetting::untimedTest);
  }

  /** The reason the person gave for not counting it; empty when it counts. */
  public Optional<String> rejection() {
    return notes.rejection();
  }

  /** Whether it is a release that says something about the shutter and counts. */
  public boolean isTry() {
    return outcome().isOfTheShutter() && rejection().isEmpty();
  }

  /**
   * Whether its time may go into the statistics of its speed. The first firing after rest never
   * does: it is shown by itself and not averaged away. One under special conditions does together
   * with its like, see {@link AlikeFirings}.
   */
  public boolean isGood() {
    return effectiveSeconds().isPresent() && rejection().isEmpty() && !afterRest();
  }

  /**
   * Whether it is one of the firings asked for, with a time or only with bounds; one that waits for
   * full light to be measured again, or for the rig to be checked, is too.
   */
  public boolean answersTheQuestion() {
    return mayHaveTime() && rejection().isEmpty() && !afterRest();
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
            .orElseGet(() -> ((Exposure.Timed) exposure).methodSeconds()));
  }

  /** The effective time by the edges alone and the two-level rule, whatever decides. */
  public OptionalDouble edgesSeconds() {
    return exposure instanceof Exposure.Timed timed && outcome == Outcome.TIMED
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
        ? OptionalDouble.of(shown().get().seconds(reference()))
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

  /**
   * Whether the light came so late that the self-timer was on, most likely. In the linkage test the
   * button is pressed slowly, and the delay is the finger's.
   */
  public boolean isBySelfTimer() {
    return releaseDelaySeconds().orElse(0) > SELF_TIMER_SECONDS && !isOfTheLinkage();
  }

  /** Whether it belongs to the linkage test. */
  public boolean isOfTheLinkage() {
    return untimedTest().equals(Optional.of(UntimedTest.LINKAGE));
  }

  /**
   * The release delay for figures of it: without releases by the self-timer, on or forgotten, and
   * without those of the linkage test.
   */
  public OptionalDouble countedDelaySeconds() {
    return isBySelfTimer()
            || isOfTheLinkage()
            || untimedTest().equals(Optional.of(UntimedTest.SELF_TIMER))
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
    FiringResult seen = with(place, outcome, exposure, measuredWith, notes, Optional.of(its));
    boolean isMade = exposure instanceof Exposure.Timed || OneLevelWatch.awaitsOtherLevel(exposure);
    if (isMade && outcome != Outcome.LIGHT_WHILE_COCKING && seen.isByCurveAlone()) {
      Exposure figures = seen.exposureBy(ExposureMethod.LEAF);
      return seen.withCurve(its, seen.outcomeWith(figures), figures, measuredWith);
    }
    return withCurve(its, outcome, exposure, measuredWith);
  }

  private FiringResult withCurve(
      FiringCurve its, Outcome outcome, Exposure edges, MeasuredWith means) {
    Optional<EdgesAndCurve> both =
        its.exposure()
            .flatMap(CurveExposure::measured)
            .map(
                measured ->
                    new EdgesAndCurve(
                        edges,
                        means.oneLevel().map(OneLevel::level),
                        levels().orElse(LevelPair.GAUSS),
                        its.sampled(),
                        its.light().orElseThrow(),
                        measured,
                        realRate()));
    // A curve that holds more light of a flap than of the exposure is none of the exposure.
    boolean ofTheFlap =
        edges instanceof Exposure.Timed timed
            && timed.flags().contains(Exposure.Flag.FLAP_LIGHT)
            && its.sampled().firstTicks() < firing.firstTicks()
            && timed.earlyLightShare() > MOST_FLAP_SHARE;
    Optional<Decided> decided =
        both.filter(known -> levels().isPresent() && !ofTheFlap)
            .flatMap(known -> known.decided(its.fullLightAfter()))
            .map(
                found ->
                    means.oneLevel().filter(OneLevel::isFixed).isPresent()
                        ? found.byCurve(both.orElseThrow().curve())
                        : found);
    return with(
        place,
        outcome,
        both.map(known -> known.remarked(decided)).orElse(edges),
        means,
        notes,
        Optional.of(its.with(decided)));
  }

  /**
   * What its edges come to by a method, with the levels and the profile that it was measured with.
   */
  public Exposure exposureBy(ExposureMethod method) {
    return method
        .knowing(measuredWith.outer(), profileUse().clockBoundShare())
        .measure(crossings(), levels().orElse(LevelPair.GAUSS), realRate());
  }

  /** What the rule for releases calls this one with other figures; light of cocking is none. */
  public Outcome outcomeWith(Exposure figures) {
    return OutcomeRule.of(firing, figures, rate, untimedTest(), notes.capOn());
  }

  /** The same firing with something else worked out from its edges. */
  public FiringResult workedOut(Outcome again, Exposure figures) {
    return with(place, again, figures, measuredWith, notes, curve);
  }

  /** The same firing and figures, with the profile that these were worked out with. */
  public FiringResult measuredWith(ProfileUse use) {
    return with(place, outcome, exposure, measuredWith.by(use), notes, curve);
  }

  /** The same firing, not counted for a reason. */
  public FiringResult rejected(String reason) {
    return with(notes.rejected(Optional.of(reason)));
  }

  /** The same firing, rejected or not as another is. */
  public FiringResult rejectedAs(FiringResult other) {
    return with(notes.rejectedAs(other.notes));
  }

  /** The same rejected firing, for another reason. */
  FiringResult because(String reason) {
    return with(notes.because(reason));
  }

  /** The same firing, held to have been fired at another speed than was shown. */
  FiringResult moved(MarkedSpeed to) {
    Optional<MarkedSpeed> original = notes.movedFrom().or(this::shown);
    return with(
        place.at(new DialSetting.Speed(to)),
        outcome,
        exposure,
        measuredWith,
        notes.moved(original.filter(from -> !from.equals(to))),
        curve);
  }

  /** The same firing under other conditions. */
  FiringResult under(FiringConditions others) {
    return with(notes.under(others));
  }

  /** The same firing, with more of what the knob contact did around it. */
  public FiringResult withKnob(List<Edge> more) {
    return new FiringResult(
        number,
        key,
        firing.withKnob(more),
        rate,
        place,
        outcome,
        exposure,
        measuredWith,
        notes,
        curve);
  }

  /** The same firing, with its light in doubt. */
  FiringResult doubtful() {
    return with(notes.doubtful());
  }

  /**
   * By how much its light stays longer above the low level than above the high one, by its curve.
   */
  OptionalDouble gapByCurve() {
    return curve
        .filter(its -> its.light().isPresent() && levels().isPresent())
        .map(
            its ->
                CurveMethod.gapSeconds(
                    its.sampled(), its.light().get(), realRate(), levels().orElseThrow()))
        .orElse(OptionalDouble.empty());
  }

  /** The same firing of a small rig, worked out with what is known of the other level since. */
  FiringResult measuredAgain(OneLevel seen) {
    MeasuredWith means = measuredWith.seen(seen);
    Exposure figures = exposureBy(seen);
    Outcome again = outcomeWith(figures);
    return curve
        .map(its -> withCurve(its, again, figures, means))
        .orElseGet(() -> with(place, again, figures, means, notes, curve));
  }

  /**
   * The same firing of curtains, worked out with what is known of the outer sensors since. What is
   * more than its edges stays as it was.
   */
  FiringResult measuredAgain(OuterSensors sensors, ExposureMethod method) {
    FiringResult knowing =
        with(place, outcome, exposure, measuredWith.sensing(sensors), notes, curve);
    Exposure figures = knowing.exposureBy(method);
    if (!(exposure.getClass().equals(figures.getClass()) || mayHaveTime())) {
      return knowing;
    }
    Outcome again = mayHaveTime() ? outcomeWith(figures) : outcome;
    return curve
        .map(its -> knowing.withCurve(its, again, figures, knowing.measuredWith))
        .orElseGet(() -> knowing.workedOut(again, figures));
  }

  /**
   * The same firing in light that became known only after it, from a shutter that was held open
   * under the same lamp. What its edges could not tell stays as it was.
   *
   * @param light dark, full light and thresholds
   * @param levels the thresholds in it
   * @param method how it is measured
   * @return empty where light changes nothing about it
   */
  Optional<FiringResult> inTheLight(
      LightLevels light, Optional<LevelPair> levels, ExposureMethod method, ProfileUse profile) {
    if (!mayHaveTime() && !OneLevelWatch.awaitsOtherLevel(exposure)) {
      return Optional.empty();
    }
    MeasuredWith means = new MeasuredWith(levels, oneLevel(), profile, measuredWith.outer());
    FiringNotes its = notes.inLight(light);
    FiringResult now =
        new FiringResult(
            number, key, firing, rate, place, outcome, exposure, means, its, Optional.empty());
    Exposure figures = now.exposureBy(method);
    FiringResult worked = now.workedOut(now.outcomeWith(figures), figures);
    // Full light was measured after it, unless its own plateau says that the lamp was another.
    OptionalDouble after = its.lightDoubtful() ? OptionalDouble.empty() : OptionalDouble.of(1);
    return Optional.of(
        sampledLight()
            .map(raw -> FiringCurve.of(raw, Optional.of(light), now.realRate()))
            .map(lit -> worked.withCurve(lit.withFullLightAfter(after)))
            .orElse(worked));
  }

  /** The same release, whose edges turned out to be damaged only after it was settled. */
  public FiringResult damagedBy(Firing.Damage damage) {
    Firing damaged = firing.damagedBy(damage);
    boolean stays = outcome == Outcome.HELD_FOR_LIGHT || outcome == Outcome.LIGHT_WHILE_COCKING;
    return new FiringResult(
        number,
        key,
        damaged,
        rate,
        place,
        stays ? outcome : Outcome.UNUSABLE,
        new Exposure.Unusable(Exposure.Reason.DAMAGED, damaged.damage()),
        measuredWith,
        notes,
        curve);
  }

  /** The same firing, open until the person closed it. */
  FiringResult stuckOpen(Exposure.StuckOpen stuck) {
    return workedOut(Outcome.STUCK_OPEN, stuck);
  }

  private FiringResult with(FiringNotes others) {
    return with(place, outcome, exposure, measuredWith, others, curve);
  }

  private FiringResult with(
      FiringPlace place,
      Outcome outcome,
      Exposure exposure,
      MeasuredWith means,
      FiringNotes notes,
      Optional<FiringCurve> curve) {
    return new FiringResult(
        number, key, firing, rate, place, outcome, exposure, means, notes, curve);
  }
}
