package org.halflight.chart;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LevelPair;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.halflight.words.Words;

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
    List<RunSummary> shown = compared(runs);
    List<MarkedSpeed> fired =
        shown.stream()
            .flatMap(run -> run.speeds().stream())
            .map(SpeedSummary::speed)
            .distinct()
            .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
            .toList();
    return speedMap(
        title,
        fired,
        speed ->
            shown.stream()
                .flatMap(run -> of(run, speed).stream())
                .findFirst()
                .orElseThrow()
                .tolerance(),
        shown,
        note);
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
      Function<MarkedSpeed, Tolerance> tolerances,
      List<RunSummary> runs,
      String note) {
    return new SpeedMap(
        title,
        dial.stream()
            .map(
                speed -> {
                  Map<Phase, SpeedSummary> its = new EnumMap<>(Phase.class);
                  runs.forEach(
                      run ->
                          of(run, speed)
                              .ifPresent(summary -> its.putIfAbsent(run.phase(), summary)));
                  return new SpeedColumn(speed, tolerances.apply(speed), its);
                })
            .toList(),
        note);
  }

  /** The runs as found and as left; those of adjusting where there is nothing else. */
  public static List<RunSummary> compared(List<RunSummary> runs) {
    List<RunSummary> both = runs.stream().filter(run -> run.phase() != Phase.ADJUSTING).toList();
    return both.stream().allMatch(run -> run.speeds().isEmpty()) ? runs : both;
  }

  /**
   * The firings that a row shows: of one speed and phase, and of a release; the rejected ones too.
   *
   * @param firings in order of firing
   */
  public static List<FiringResult> releases(List<FiringResult> firings, SpeedSummary speed) {
    return firings.stream()
        .filter(f -> f.shown().equals(Optional.of(speed.speed())))
        .filter(f -> f.phase().equals(Optional.of(speed.phase())))
        .filter(f -> f.errorStops().isPresent() || FiringRow.OUTCOMES.contains(f.outcome()))
        .toList();
  }

  /**
   * The firing row of one speed in one phase.
   *
   * @param firings all firings of the session; at least one of the speed and phase
   * @param speed summed up
   */
  public static FiringRow firingRow(List<FiringResult> firings, SpeedSummary speed, String note) {
    return firingRow(firings, speed, Sentences.phaseWithin(speed.phase()), List.of(), note);
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
    return new FiringRow(
        speed,
        runName,
        releases(firings, speed).stream().map(firing -> release(firing, speed)).toList(),
        adjustments,
        note);
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
        .flatMap(f -> curveOf(f, note));
  }

  /** The light curve of one firing, whether it counts or not; empty where it has none to scale. */
  public static Optional<LightCurvePicture> curveOf(FiringResult firing, String note) {
    return firing
        .curve()
        .filter(curve -> curve.exposure().isPresent())
        .map(
            curve ->
                new LightCurvePicture(
                    Words.say("chart.curveTitle", settingOf(firing), firing.number()),
                    CurvePoints.of(curve.sampled(), curve.light().orElseThrow(), firing.rate()),
                    curve.exposure().orElseThrow(),
                    firing.levels().orElse(LevelPair.GAUSS),
                    note));
  }

  /**
   * The edges of one firing.
   *
   * @param why it is drawn in place of its light curve; empty where it is drawn for itself
   */
  public static EdgesPicture edges(FiringResult firing, String why, String note) {
    return new EdgesPicture(
        Words.say(
            why.isEmpty() ? "chart.edges.title" : "chart.edges.instead",
            settingOf(firing),
            firing.number()),
        why,
        firing.firing().edges(),
        firing.rate(),
        note);
  }

  private static String settingOf(FiringResult firing) {
    return firing.setting().map(Sentences::dial).orElseGet(() -> Words.say("chart.noSpeed"));
  }

  /**
   * Firings that were made before a run was begun, so that they belong to no speed. A shutter that
   * was held open to set the light was not fired.
   */
  public static List<FiringResult> withoutRun(List<FiringResult> firings) {
    return firings.stream()
        .filter(firing -> firing.phase().isEmpty())
        .filter(firing -> firing.outcome() != Outcome.HELD_FOR_LIGHT)
        .toList();
  }

  /** Their times; empty where there are none. */
  public static Optional<FiringTimes> times(List<FiringResult> firings, String note) {
    List<FiringTimes.Firing> each =
        withoutRun(firings).stream().map(FiringTimes.Firing::of).toList();
    return each.isEmpty() ? Optional.empty() : Optional.of(new FiringTimes(each, note));
  }

  private static Optional<SpeedSummary> of(RunSummary run, MarkedSpeed speed) {
    return run.speeds().stream().filter(its -> its.speed().equals(speed)).findFirst();
  }

  private static FiringRow.Release release(FiringResult firing, SpeedSummary speed) {
    return new FiringRow.Release(
        firing.outcome(),
        firing.errorStops().isPresent()
            ? OptionalDouble.of(speed.rebound().errorStops(firing))
            : OptionalDouble.empty(),
        firing.afterRest(),
        firing.rejection(),
        firing.conditions().besideRest(),
        !speed.conditions().ofMean().equals(Optional.of(firing.conditions().besideRest())));
  }
}
