package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import org.halflight.exposure.CurtainMethod;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.OuterSensors;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;

/**
 * Measures a firing: from its edges and its light curve, by the profile of the rig, the light that
 * was set and the kind of shutter, to figures.
 */
final class FiringMeter {
  private final FiringLog log;
  private final RunProgress progress;
  private final RigOnBench rig;
  private final LightState light;
  private final Function<RunSetup, ExposureMethod> methods;
  private final ProfileWatch profiles = new ProfileWatch();
  private final OneLevelWatch oneLevel = new OneLevelWatch(this::gapByCurve);
  private final CurveWatch curves = new CurveWatch();
  private final CurtainWatch curtains = new CurtainWatch();

  /**
   * @param methods how the firings of a run are measured
   */
  FiringMeter(
      FiringLog log,
      RunProgress progress,
      RigOnBench rig,
      LightState light,
      Function<RunSetup, ExposureMethod> methods) {
    this.log = log;
    this.progress = progress;
    this.rig = rig;
    this.light = light;
    this.methods = methods;
  }

  ProfileWatch profiles() {
    return profiles;
  }

  OneLevelWatch oneLevel() {
    return oneLevel;
  }

  /** The profile that is measured with now. */
  ProfileUse profileUse() {
    return profiles.use(light.set());
  }

  /** Ticks start again. */
  void forgetTicks() {
    curves.forget();
  }

  /** What the edges of a firing come to that is over or under way. */
  Exposure exposure(Firing firing) {
    LevelPair assumed = levels().orElse(LevelPair.GAUSS);
    long nowTicks = Math.max(rig.latestTicks(), firing.lastTicks());
    ProfileUse profile = profileUse();
    return method(oneLevel.isOneLevel() ? seenNow() : Optional.empty())
        .measure(
            profile.crossings(firing, rig.rate()), assumed, profile.rate(rig.rate()), nowTicks);
  }

  /** A firing of the run with what is known since; empty where that changes nothing about it. */
  private Optional<FiringResult> seenSince(FiringResult before) {
    OuterSensors now = curtains.since(before.measuredWith().outer());
    return Optional.of(before.measuredAgain(now, ofTheRun()))
        .filter(after -> !after.exposure().equals(before.exposure()));
  }

  /**
   * From the press of the release to first light, in seconds; of curtains to first light at the
   * start of their travel.
   */
  OptionalDouble delaySeconds(Firing firing, Exposure exposure) {
    ProfileUse profile = profileUse();
    return ReleaseTiming.delaySeconds(
        profile.crossings(firing, rig.rate()),
        exposure
            .curtains()
            .map(its -> OptionalLong.of(its.zeroTicks()))
            .orElse(OptionalLong.empty()),
        profile.rate(rig.rate()));
  }

  /** A release that has settled, with the curve of it that came before. */
  FiringResult result(
      int number,
      FiringKey key,
      Firing firing,
      FiringPlace place,
      Outcome outcome,
      Exposure exposure,
      Optional<OneLevel> seen,
      FiringNotes notes) {
    FiringResult result =
        new FiringResult(
            number,
            key,
            firing,
            rig.rate(),
            place,
            outcome,
            exposure,
            new MeasuredWith(levels(), seen, profileUse(), sensors()),
            notes,
            Optional.empty());
    return curves.of(firing, exposure).map(curve -> withCurve(result, curve)).orElse(result);
  }

  /** The firing that a light curve belongs to, with it; empty where it has not settled yet. */
  Optional<FiringResult> onCurve(SampledLight curve) {
    return curves
        .onCurve(curve, log, rig.serial(), rig.bootCount())
        .map(result -> withCurve(result, curve));
  }

  /** Where both thresholds stand while nobody has set the light, where that is known. */
  Optional<HeldLight.ThresholdsAt> thresholdsAt() {
    if (oneLevel.isFixed()) {
      return light.thresholds().map(at -> HeldLight.ThresholdsAt.fixed(at.lowCounts()));
    }
    // The threshold of a small rig goes between these two, and was read back each time.
    return oneLevel.isOneLevel()
        ? Optional.of(
            new HeldLight.ThresholdsAt(
                ThresholdCodes.AFTER_START.lowCounts(), ThresholdCodes.AFTER_START.highCounts()))
        : light.thresholds();
  }

  /**
   * The firings of the run as they are in light that is known only now; those of an earlier start
   * of the rig had other thresholds.
   */
  List<FiringResult> inTheLight(LightLevels known) {
    return log.all().stream()
        .filter(
            r ->
                r.run() == progress.run()
                    && r.levels().isEmpty()
                    && r.key().rigSerial().equals(rig.serial())
                    && r.key().bootCount() == rig.bootCount())
        .flatMap(r -> r.inTheLight(known, levels(), method(r.oneLevel()), profileUse()).stream())
        .toList();
  }

  /** Firings of the run that a small rig saw at one level are completed by their light curve. */
  void completeByCurve(List<SessionEvent> events) {
    log.all().stream()
        .filter(r -> r.run() == progress.run() && OneLevelWatch.awaitsOtherLevel(r.exposure()))
        .toList()
        .forEach(r -> oneLevel.measureAgain(r, log, events));
  }

  /** In a quick look there are no other firings of a speed: its own curve shows both levels. */
  private OptionalDouble gapByCurve(FiringResult firing) {
    return progress.isQuick() ? firing.gapByCurve() : OptionalDouble.empty();
  }

  private ExposureMethod method(Optional<OneLevel> seen) {
    return oneLevel.isOneLevel()
        ? seen.orElse(OneLevelWatch.ON_ITS_WAY)
        : ofTheRun().knowing(sensors(), profileUse().clockBoundShare());
  }

  private ExposureMethod ofTheRun() {
    return progress.setup().map(methods).orElse(ExposureMethod.LEAF);
  }

  private boolean readsCurtains() {
    return !oneLevel.isOneLevel() && ofTheRun() instanceof CurtainMethod;
  }

  /** What is known of the outer sensors, where curtains are measured by them. */
  private OuterSensors sensors() {
    return readsCurtains()
        ? curtains.known(progress.run(), light.set(), light.outer())
        : OuterSensors.UNKNOWN;
  }

  /**
   * A firing settled. What it tells about the outer sensors and the direction of travel holds for
   * the whole run: the firings of before, too, are worked out with it.
   */
  void learn(FiringResult settled, List<SessionEvent> events) {
    Optional<RunSetup> setup = progress.setup();
    if (setup.filter(its -> its.shutter().isCurtain()).isEmpty()
        || !FiringLog.isOfTheShutter(settled.outcome(), settled.exposure())) {
      return;
    }
    if (readsCurtains() && curtains.learns(progress.run(), settled.crossings())) {
      log.all().stream()
          .filter(r -> r.run() == progress.run())
          .flatMap(r -> seenSince(r).stream())
          .toList()
          .forEach(now -> log.change(now, events));
    }
    boolean isCentreOnly =
        oneLevel.isOneLevel()
            || (settled.exposure() instanceof Exposure.Timed timed && timed.curtains().isEmpty());
    if (isCentreOnly && curtains.isCentreOnlyNews(progress.run())) {
      events.add(
          new SessionEvent.CurtainsAtTheCentre(
              CentreOnly.why(setup.get(), !oneLevel.isOneLevel())));
    }
    if (settled.exposure() instanceof Exposure.Timed timed) {
      timed.curtains().stream()
          .flatMap(travel -> travel.notes().stream())
          .filter(note -> note != CurtainNote.DISTANCES_NOT_SAID)
          .sorted()
          .filter(note -> curtains.isNews(progress.run(), note))
          .forEach(note -> events.add(new SessionEvent.CurtainsNoted(note)));
    }
  }

  private FiringResult withCurve(FiringResult result, SampledLight curve) {
    return result.withCurve(FiringCurve.of(curve, light.now(), result.realRate()));
  }

  /** How a firing that is over now was seen; empty with a rig of two levels. */
  Optional<OneLevel> seenNow() {
    return oneLevel.seen(log.at(progress.run(), progress.shown()));
  }

  /**
   * The levels at which the comparators switch, in the mean of rising and falling light: that one
   * switches later on the way up by half its hysteresis and as much later on the way down, which
   * moves an opening and leaves its width.
   */
  Optional<LevelPair> levels() {
    if (oneLevel.isFixed()) {
      // The curve is asked for just these.
      return light.set().map(set -> LevelPair.GAUSS);
    }
    return light
        .set()
        .flatMap(
            set ->
                set.levels() instanceof LightLevels.Known
                    ? profileUse().trips(light.trips()).middle(set)
                    : Optional.empty());
  }
}
