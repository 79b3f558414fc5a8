package org.halflight.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LevelPair;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Interval;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;

/** The pictures of runs, from their results. */
public final class RunPictures {
  private RunPictures() {}

  /**
   * The speed map of an as-found run, an as-left run, or both.
   *
   * @param title what it is of
   * @param runs at least one with a speed; adjusting firings are not shown
   * @param note where the figures come from
   */
  public static SpeedMap speedMap(String title, List<RunSummary> runs, String note) {
    List<SpeedSummary> found = speeds(runs, Phase.AS_FOUND);
    List<SpeedSummary> left = speeds(runs, Phase.AS_LEFT);
    List<SpeedSummary> shown = new ArrayList<>(found);
    left.stream().filter(l -> of(found, l.speed()).isEmpty()).forEach(shown::add);
    if (shown.isEmpty()) {
      shown.addAll(speeds(runs, Phase.ADJUSTING));
    }
    shown.sort(
        java.util.Comparator.comparingDouble((SpeedSummary s) -> s.speed().literalSeconds())
            .reversed());
    boolean adjustingOnly = found.isEmpty() && left.isEmpty();
    List<SpeedColumn> columns =
        shown.stream()
            .map(
                speed ->
                    new SpeedColumn(
                        speed.speed().label(),
                        of(adjustingOnly ? shown : found, speed.speed())
                            .or(() -> of(left, speed.speed()))
                            .map(RunPictures::tolerance)
                            .orElseThrow(),
                        adjustingOnly
                            ? Optional.of(run(speed))
                            : of(found, speed.speed()).map(RunPictures::run),
                        of(left, speed.speed()).map(RunPictures::run),
                        of(left, speed.speed())
                            .map(RunPictures::tolerance)
                            .orElseGet(() -> tolerance(speed))))
            .toList();
    return new SpeedMap(new SpeedMapData(title, columns, SpeedSummary.LEVEL, note));
  }

  /**
   * The speed map of a run that is under way: every speed of its dial has a place from the start.
   *
   * @param title what it is of
   * @param dial the marked speeds, slow to fast, at least one; each speed that was fired is there
   * @param tolerances of each speed
   * @param runs may be empty
   * @param note where the figures come from
   */
  public static SpeedMap speedMap(
      String title,
      List<MarkedSpeed> dial,
      Function<MarkedSpeed, org.halflight.speeds.Tolerance> tolerances,
      List<RunSummary> runs,
      String note) {
    List<SpeedSummary> found = speeds(runs, Phase.AS_FOUND);
    List<SpeedSummary> left = speeds(runs, Phase.AS_LEFT);
    List<SpeedSummary> first =
        found.isEmpty() && left.isEmpty() ? speeds(runs, Phase.ADJUSTING) : found;
    List<SpeedColumn> columns =
        dial.stream()
            .map(
                speed ->
                    new SpeedColumn(
                        speed.label(),
                        of(first, speed)
                            .or(() -> of(left, speed))
                            .map(RunPictures::tolerance)
                            .orElseGet(() -> tolerance(tolerances.apply(speed))),
                        of(first, speed).map(RunPictures::run),
                        of(left, speed).map(RunPictures::run),
                        of(left, speed)
                            .or(() -> of(first, speed))
                            .map(RunPictures::tolerance)
                            .orElseGet(() -> tolerance(tolerances.apply(speed)))))
            .toList();
    return new SpeedMap(new SpeedMapData(title, columns, SpeedSummary.LEVEL, note));
  }

  /**
   * The firings that a row shows: of one speed and phase, of a release, and not rejected.
   *
   * @param firings in order of firing
   */
  public static List<FiringResult> releases(List<FiringResult> firings, SpeedSummary speed) {
    return firings.stream()
        .filter(f -> f.shown().equals(Optional.of(speed.speed())))
        .filter(f -> f.phase().equals(Optional.of(speed.phase())))
        .filter(f -> f.rejection().isEmpty() && release(f, speed).isPresent())
        .toList();
  }

  /**
   * The firing row of one speed in one phase.
   *
   * @param firings all firings of the session; at least one of the speed and phase
   * @param speed summed up
   */
  public static FiringRow firingRow(List<FiringResult> firings, SpeedSummary speed, String note) {
    return firingRow(firings, speed, Sentences.phase(speed.phase()), List.of(), note);
  }

  /**
   * The firing row of one speed in one phase, with adjustments between its firings.
   *
   * @param firings all of them
   * @param speed what the firings that count come to
   * @param runName how those are called
   * @param adjustments count the releases that the row shows, see {@link #releases}
   */
  public static FiringRow firingRow(
      List<FiringResult> firings,
      SpeedSummary speed,
      String runName,
      List<Adjustment> adjustments,
      String note) {
    List<Release> releases =
        releases(firings, speed).stream().flatMap(f -> release(f, speed).stream()).toList();
    return new FiringRow(
        new FiringRowData(
            speed.speed().label(),
            runName,
            speed.phase() == Phase.AS_LEFT,
            releases,
            mean(speed),
            SpeedSummary.LEVEL,
            tolerance(speed),
            adjustments,
            note));
  }

  /**
   * The light curve of the last of some firings that has one with a set light; empty where none
   * has.
   *
   * @param firings in order of firing
   */
  public static Optional<LightCurvePicture> lightCurve(List<FiringResult> firings, String note) {
    return firings.stream()
        .filter(f -> f.curveExposure().isPresent() && f.rejection().isEmpty())
        .reduce((first, second) -> second)
        .map(f -> lightCurve(f, note));
  }

  private static LightCurvePicture lightCurve(FiringResult firing, String note) {
    FiringCurve curve = firing.curve().orElseThrow();
    String speed = firing.shown().map(shown -> shown.label() + " s").orElse("no speed");
    return new LightCurvePicture(
        "Light curve, " + speed + ", firing " + firing.number(),
        CurvePoints.of(curve.sampled(), curve.light().orElseThrow(), firing.rate()),
        curve.exposure().orElseThrow(),
        firing.levels().orElse(LevelPair.GAUSS),
        note);
  }

  private static List<SpeedSummary> speeds(List<RunSummary> runs, Phase phase) {
    return runs.stream()
        .filter(run -> run.phase() == phase)
        .flatMap(run -> run.speeds().stream())
        .toList();
  }

  private static Optional<SpeedSummary> of(List<SpeedSummary> speeds, MarkedSpeed speed) {
    return speeds.stream().filter(s -> s.speed().equals(speed)).findFirst();
  }

  private static RunAtSpeed run(SpeedSummary speed) {
    return new RunAtSpeed(
        java.util.Arrays.stream(speed.errors().values()).boxed().toList(),
        mean(speed),
        speed.count(Outcome.STUCK_OPEN),
        speed.count(Outcome.DID_NOT_OPEN));
  }

  private static Optional<Mean> mean(SpeedSummary speed) {
    OptionalDouble mean = speed.meanStops();
    return mean.isPresent()
        ? Optional.of(
            new Mean(
                mean.getAsDouble(),
                speed.expandedIntervalStops().map(RunPictures::span),
                speed.meanIntervalStops().map(RunPictures::span)))
        : Optional.empty();
  }

  private static Span span(Interval interval) {
    return new Span(interval.low(), interval.high());
  }

  /** The limits of a speed with its guard band; none before there are two firings. */
  private static Tolerance tolerance(SpeedSummary speed) {
    Tolerance limits = tolerance(speed.tolerance());
    OptionalDouble above = speed.guardAboveStops();
    OptionalDouble below = speed.guardBelowStops();
    // Where the truth may lie further below the mean, the mean must be further above a limit.
    return above.isPresent() && above.getAsDouble() > 0
        ? limits.withUnsure(above.getAsDouble(), below.getAsDouble())
        : limits;
  }

  private static Tolerance tolerance(org.halflight.speeds.Tolerance tolerance) {
    return new Tolerance(new Span(-tolerance.fastStops(), tolerance.slowStops()), Optional.empty());
  }

  private static Optional<Release> release(FiringResult firing, SpeedSummary speed) {
    Function<ReleaseOutcome, Optional<Release>> untimed =
        outcome -> Optional.of(Release.untimed(outcome));
    if (firing.errorStops().isPresent()) {
      return Optional.of(
          new Release(
              ReleaseOutcome.TIMED,
              OptionalDouble.of(speed.rebound().errorStops(firing)),
              firing.afterRest()));
    }
    return switch (firing.outcome()) {
      case TIMED -> untimed.apply(ReleaseOutcome.NOTHING_DECIDES);
      case NEVER_FULLY_OPEN -> untimed.apply(ReleaseOutcome.NEVER_FULLY_OPEN);
      case STUCK_OPEN -> untimed.apply(ReleaseOutcome.STUCK_OPEN);
      case DID_NOT_OPEN -> untimed.apply(ReleaseOutcome.DID_NOT_OPEN);
      case DOUBLE -> untimed.apply(ReleaseOutcome.DOUBLE);
      case LIGHT_WHILE_COCKING -> untimed.apply(ReleaseOutcome.LIGHT_WHILE_COCKING);
      case OPENS_HOLDS_CLOSES, DID_NOT_HOLD, HELD_FOR_LIGHT, NOT_A_SHUTTER_EVENT, UNUSABLE ->
          Optional.empty();
    };
  }
}
