package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;

/**
 * The interval between film advance and blades over a run of an earlier version, which timed it in
 * milliseconds. Milliseconds are the speed of the finger, so the interval is a figure without good
 * or bad; {@link Linkage} judges. While adjusting, the linkage was another one after each turn of
 * the screw, so the newest trial alone counts; else their mean.
 *
 * @param run counts the runs of the session from 1
 * @param phase of the run
 * @param trials in order of firing, without those that the person rejected; at least one
 * @param own what is known of the shutter's own sounds
 * @param releaseIsWired whether the release was seen in any firing of the run
 */
public record AdvanceTiming(
    int run,
    Optional<Phase> phase,
    List<AdvanceTrial> trials,
    OwnSounds own,
    boolean releaseIsWired)
    implements ExtraTest {
  /** How sure the mean is to lie within what is stated of it. */
  private static final double LEVEL = 0.95;

  public AdvanceTiming {
    trials = List.copyOf(trials);
    if (trials.isEmpty()) {
      throw new IllegalArgumentException("an advance was timed at least once");
    }
  }

  /** The intervals of one run; empty where they were not asked for. */
  static Optional<AdvanceTiming> of(ExtraTests.Of run, List<FiringResult> firings) {
    List<FiringResult> tried = of(firings, UntimedTest.WIND_AND_RELEASE);
    if (tried.isEmpty()) {
      return Optional.empty();
    }
    OwnSounds sounds = ownSounds(of(firings, UntimedTest.RELEASE_ALONE), tried);
    return Optional.of(
        new AdvanceTiming(
            run.number(),
            run.phase(),
            tried.stream().map(firing -> AdvanceTrial.of(firing, sounds)).toList(),
            sounds,
            tried.stream().anyMatch(f -> !f.firing().of(Channel.RELEASE).isEmpty())));
  }

  private static List<FiringResult> of(List<FiringResult> firings, UntimedTest check) {
    return firings.stream()
        .filter(f -> f.untimedTest().equals(Optional.of(check)))
        .filter(f -> f.outcome().isOfTheShutter() || hasLight(f))
        .filter(f -> f.rejection().isEmpty())
        .toList();
  }

  /** A small rig has no time of a firing before it saw the other level, and has its opening. */
  private static boolean hasLight(FiringResult firing) {
    return firing.oneLevel().isPresent() && ClickTrace.of(firing).isPresent();
  }

  private static OwnSounds ownSounds(List<FiringResult> alone, List<FiringResult> tried) {
    List<List<OwnSounds.Heard>> heard =
        alone.stream()
            .flatMap(
                f ->
                    ClickTrace.of(f).stream()
                        .map(
                            around ->
                                around.heard().stream().map(c -> heard(around, c, f)).toList()))
            .toList();
    return OwnSounds.alone(heard).or(() -> OwnSounds.trials(near(tried))).orElse(OwnSounds.CUSTOM);
  }

  private static OwnSounds.Heard heard(ClickTrace around, Click click, FiringResult firing) {
    return new OwnSounds.Heard(
        AdvanceTrial.before(around, click, firing.rate()),
        new OwnSounds.Ringing(
            firing.rate().seconds(click.endTicks() - click.onsetTicks()),
            click.pauses().stream()
                .mapToDouble(pause -> firing.rate().seconds(pause.ticks()))
                .max()
                .orElse(0)));
  }

  /** The click next to the opening in trials where the advance was told without more knowledge. */
  private static List<Double> near(List<FiringResult> tried) {
    List<Double> near = new ArrayList<>();
    for (FiringResult firing : tried) {
      AdvanceTrial trial = AdvanceTrial.of(firing, OwnSounds.CUSTOM);
      boolean told = trial.interval().filter(i -> !i.byContact()).isPresent();
      ClickTrace.of(firing)
          .filter(around -> told)
          .ifPresent(
              around ->
                  around.heard().stream()
                      .filter(c -> !c.crowded())
                      .map(c -> AdvanceTrial.before(around, c, firing.rate()))
                      .filter(before -> OwnSounds.CUSTOM.of(before).isPresent())
                      .forEach(near::add));
    }
    return near;
  }

  /** The last trial. */
  public AdvanceTrial newest() {
    return trials.get(trials.size() - 1);
  }

  /** The intervals that are judged, in seconds: all of the run, and while adjusting the newest. */
  public Sample intervals() {
    return Sample.of(
        judged().stream()
            .flatMap(t -> t.interval().stream())
            .map(AdvanceTrial.Interval::seconds)
            .toList());
  }

  /** Their mean, in seconds; above zero the advance comes first. */
  public OptionalDouble meanSeconds() {
    return figure(intervals().mean().known());
  }

  /** Their standard deviation, in seconds; empty with fewer than two. */
  public OptionalDouble scatterSeconds() {
    return figure(intervals().sd().known());
  }

  /**
   * How far off the mean may be, in seconds: what the sensor is good to, which no number of trials
   * makes smaller, and half the 95 % interval of the mean, as the root of their squares. With one
   * trial the sensor alone.
   */
  public OptionalDouble plusMinusSeconds() {
    OptionalDouble sensor =
        judged().stream()
            .flatMap(t -> t.interval().stream())
            .mapToDouble(AdvanceTrial.Interval::plusMinusSeconds)
            .max();
    if (meanSeconds().isEmpty()) {
      return OptionalDouble.empty();
    }
    double ofTheMean =
        intervals().meanInterval(LEVEL).known().map(AdvanceTiming::halfWidth).orElse(0.0);
    return OptionalDouble.of(Math.hypot(sensor.orElseThrow(), ofTheMean));
  }

  @Override
  public String what() {
    return "linkage";
  }

  @Override
  public CheckItem item() {
    return CheckItem.WIND;
  }

  /** Never judged. */
  @Override
  public CheckState state() {
    return CheckState.NOT_TESTED;
  }

  @Override
  public List<ExtraTestValue> values() {
    List<ExtraTestValue> values = new ArrayList<>();
    int n = intervals().n();
    meanSeconds()
        .ifPresent(mean -> values.add(millis("advance-before-blades", mean, n, scatterSeconds())));
    plusMinusSeconds()
        .ifPresent(
            reach -> values.add(millis("advance-plus-minus", reach, n, OptionalDouble.empty())));
    int untold = (int) trials.stream().filter(t -> t.interval().isEmpty()).count();
    if (untold > 0) {
      values.add(
          new ExtraTestValue(
              "advance-not-told", "", untold, "count", trials.size(), OptionalDouble.empty()));
    }
    return values;
  }

  private List<AdvanceTrial> judged() {
    return isAdjusting() ? List.of(newest()) : trials;
  }

  private boolean isAdjusting() {
    return phase.equals(Optional.of(Phase.ADJUSTING));
  }

  private static ExtraTestValue millis(
      String quantity, double seconds, int n, OptionalDouble spreadSeconds) {
    return new ExtraTestValue(
        quantity,
        "",
        1e3 * seconds,
        "ms",
        n,
        spreadSeconds.isPresent()
            ? OptionalDouble.of(1e3 * spreadSeconds.getAsDouble())
            : OptionalDouble.empty());
  }

  private static double halfWidth(Interval interval) {
    return (interval.high() - interval.low()) / 2;
  }

  private static OptionalDouble figure(Optional<Double> known) {
    return known.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }
}
