package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkageLimits;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;

/**
 * Wind and release timing over a run: does the film advance come free before the blades, and by how
 * much. While adjusting, the linkage is another one after each turn of the screw, so the newest
 * trial alone is judged; else their mean.
 *
 * @param run counts the runs of the session from 1
 * @param phase of the run
 * @param trials in order of firing, without those that the person rejected; at least one
 * @param own what is known of the shutter's own sounds
 * @param limits from where to where the linkage is good
 * @param releaseIsWired whether the release was seen in any firing of the run
 */
public record AdvanceTiming(
    int run,
    Optional<Phase> phase,
    List<AdvanceTrial> trials,
    OwnSounds own,
    LinkageLimits limits,
    boolean releaseIsWired)
    implements ExtraTest {
  /** How sure the mean is to lie within what is stated of it. */
  private static final double LEVEL = 0.95;

  /** How the linkage stands. */
  public enum Verdict {
    /** The advance frees first, by a hair. */
    GOOD,
    /** The advance frees too early, by a plain margin: adjust it to free later. */
    TOO_EARLY,
    /** The advance frees after the blades, and the camera can jam: adjust it to free earlier. */
    TOO_LATE,
    /** A limit lies within the uncertainty. */
    TOO_CLOSE_TO_CALL,
    /** No trial has an interval. */
    NOT_TOLD
  }

  public AdvanceTiming {
    trials = List.copyOf(trials);
    if (trials.isEmpty()) {
      throw new IllegalArgumentException("a linkage was tried at least once");
    }
  }

  /** The linkage of one run; empty where it was not tried. */
  static Optional<AdvanceTiming> of(
      ExtraTests.Of run, List<FiringResult> firings, LinkageLimits limits) {
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
            limits,
            tried.stream().anyMatch(f -> !f.firing().of(Channel.RELEASE).isEmpty())));
  }

  /**
   * The linkage as it stands with the newest firing; empty where that was no trial of it.
   *
   * @param all firings of the session
   * @param runs what each run was set up for, in order
   */
  public static Optional<AdvanceTiming> with(
      FiringResult newest, List<FiringResult> all, List<RunSetup> runs) {
    if (!newest.untimedTest().equals(Optional.of(UntimedTest.WIND_AND_RELEASE))) {
      return Optional.empty();
    }
    List<FiringResult> heard =
        all.stream()
            .filter(firing -> firing.run() == newest.run())
            .filter(firing -> firing.untimedTest().filter(UntimedTest::isForTheEar).isPresent())
            .toList();
    return ExtraTests.of(heard, List.of(), runs).stream()
        .filter(AdvanceTiming.class::isInstance)
        .map(AdvanceTiming.class::cast)
        .filter(linkage -> linkage.newest().firing().key().equals(newest.key()))
        .findFirst();
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

  /** How the linkage stands. */
  public Verdict verdict() {
    if (meanSeconds().isEmpty()) {
      return Verdict.NOT_TOLD;
    }
    return verdict(meanSeconds().getAsDouble(), plusMinusSeconds().getAsDouble());
  }

  /** Which way to adjust. */
  public enum Way {
    /** So that the advance frees earlier. */
    EARLIER,
    /** So that it frees later. */
    LATER
  }

  /**
   * Which way to adjust; empty where it is good or nothing is known. Where clicks overlap and there
   * is no interval, between what it lies can still tell: an advance that frees at the earliest
   * short of the middle of the good zone can only be helped by freeing earlier.
   */
  public Optional<Way> way() {
    return way(verdict(), meanSeconds(), newest());
  }

  /** Which way one trial alone says to adjust, likewise. */
  public Optional<Way> way(AdvanceTrial trial) {
    return way(verdict(trial), figure(trial.interval().map(AdvanceTrial.Interval::seconds)), trial);
  }

  private Optional<Way> way(Verdict verdict, OptionalDouble seconds, AdvanceTrial trial) {
    double middle = limits.middleSeconds();
    return switch (verdict) {
      case GOOD -> Optional.empty();
      case TOO_EARLY -> Optional.of(Way.LATER);
      case TOO_LATE -> Optional.of(Way.EARLIER);
      case TOO_CLOSE_TO_CALL ->
          Optional.of(seconds.orElseThrow() < middle ? Way.EARLIER : Way.LATER);
      case NOT_TOLD ->
          trial.finding() instanceof AdvanceTrial.NotTold not
              ? towards(not, middle)
              : Optional.empty();
    };
  }

  private static Optional<Way> towards(AdvanceTrial.NotTold not, double middle) {
    if (not.earliestSeconds().isPresent() && not.earliestSeconds().getAsDouble() < middle) {
      return Optional.of(Way.EARLIER);
    }
    return not.latestSeconds().isPresent() && not.latestSeconds().getAsDouble() > middle
        ? Optional.of(Way.LATER)
        : Optional.empty();
  }

  /** How one trial alone stands. */
  public Verdict verdict(AdvanceTrial trial) {
    return trial
        .interval()
        .map(told -> verdict(told.seconds(), told.plusMinusSeconds()))
        .orElse(Verdict.NOT_TOLD);
  }

  private Verdict verdict(double seconds, double plusMinus) {
    if (seconds - plusMinus > limits.mostSeconds()) {
      return Verdict.TOO_EARLY;
    }
    if (seconds + plusMinus < limits.leastSeconds()) {
      return Verdict.TOO_LATE;
    }
    return seconds - plusMinus >= limits.leastSeconds()
            && seconds + plusMinus <= limits.mostSeconds()
        ? Verdict.GOOD
        : Verdict.TOO_CLOSE_TO_CALL;
  }

  /** Trials that came to nothing for a reason. */
  public int count(AdvanceTrial.Reason reason) {
    return (int) trials.stream().filter(t -> t.reason().equals(Optional.of(reason))).count();
  }

  @Override
  public String what() {
    return "linkage";
  }

  @Override
  public CheckItem item() {
    return CheckItem.WIND;
  }

  @Override
  public CheckState state() {
    return switch (verdict()) {
      case GOOD -> CheckState.OK;
      case TOO_EARLY, TOO_LATE -> CheckState.FAULT;
      case TOO_CLOSE_TO_CALL, NOT_TOLD -> CheckState.NOT_TESTED;
    };
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

  /** Whether the linkage is being set, and each trial tries another one. */
  public boolean isAdjusting() {
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
