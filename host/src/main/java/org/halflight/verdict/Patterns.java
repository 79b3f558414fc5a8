package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.session.Outcome;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.MannKendall;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;
import org.halflight.verdict.Pattern.Kind;
import org.halflight.verdict.Pattern.Sign;

/**
 * Sees the pattern of a run. That dry bearings or dirt in the escapement spoil the slow speeds is
 * in the repair literature (L. P. Clerc, Photography, Theory and Practice, sect. 139; US Army
 * SS0522); where the lines between 'sound' and 'long' are drawn is common practice, no source.
 */
public final class Patterns {
  /** Half of the usual tolerance: from here on an error is more than the usual spread of a dial. */
  private static final double NOTICEABLE_STOPS = 1 / 6.0;

  /** Chance of seeing a sign where there is none. */
  private static final double ALPHA = 0.05;

  /** Scatter of the slow speeds against that of the others, from which it is a sign. */
  private static final double RATIO = 2;

  private Patterns() {}

  /** The pattern of a run. */
  public static Pattern of(RunSummary run) {
    List<SpeedSummary> speeds = run.speeds().stream().filter(Patterns::known).toList();
    if (speeds.size() < CommonPart.LEAST_SPEEDS) {
      return pattern(Kind.TOO_LITTLE, List.of(), run);
    }
    List<SpeedSummary> off = speeds.stream().filter(s -> !sound(s)).toList();
    List<SpeedSummary> slow =
        speeds.stream().filter(s -> SlowSpeedTrain.governs(s.speed())).toList();
    List<SpeedSummary> fast =
        speeds.stream().filter(s -> !SlowSpeedTrain.governs(s.speed())).toList();
    List<SpeedSummary> spoilt = slow.stream().filter(s -> isLong(s) || hangs(s)).toList();
    if (fast.size() >= 2
        && fast.stream().allMatch(Patterns::sound)
        && spoilt.size() >= 2
        && 2 * spoilt.size() >= slow.size()) {
      return pattern(Kind.SLOW_SPEED_TRAIN, spoilt, run);
    }
    if (speeds.stream().allMatch(Patterns::isLong)) {
      return pattern(Kind.ALL_SLOW, speeds, run);
    }
    if (speeds.stream().allMatch(Patterns::isShort)) {
      return pattern(Kind.ALL_FAST, speeds, run);
    }
    if (off.isEmpty()) {
      return pattern(Kind.NOTHING_STANDS_OUT, List.of(), run);
    }
    if (off.size() == 1) {
      boolean top = off.get(0).equals(speeds.get(speeds.size() - 1));
      return pattern(top && isLong(off.get(0)) ? Kind.TOP_SLOW : Kind.ONE_ALONE, off, run);
    }
    return pattern(Kind.NO_KNOWN_PATTERN, off, run);
  }

  private static boolean known(SpeedSummary speed) {
    return speed.meanIntervalStops().isPresent() || hangs(speed) || shut(speed);
  }

  /** Opens and closes every time, and its mean is not shown to be beyond the tolerance. */
  private static boolean sound(SpeedSummary speed) {
    return !hangs(speed)
        && !shut(speed)
        && speed.placement() != Placement.SLOW
        && speed.placement() != Placement.FAST;
  }

  private static boolean isLong(SpeedSummary speed) {
    return speed.placement() == Placement.SLOW
        || speed
            .meanIntervalStops()
            .filter(i -> i.low() > 0 && speed.meanStops().orElse(0) >= NOTICEABLE_STOPS)
            .isPresent();
  }

  private static boolean isShort(SpeedSummary speed) {
    return speed.placement() == Placement.FAST
        || speed
            .meanIntervalStops()
            .filter(i -> i.high() < 0 && speed.meanStops().orElse(0) <= -NOTICEABLE_STOPS)
            .isPresent();
  }

  private static boolean hangs(SpeedSummary speed) {
    return speed.count(Outcome.STUCK_OPEN) > 0;
  }

  private static boolean shut(SpeedSummary speed) {
    return speed.count(Outcome.DID_NOT_OPEN) > 0;
  }

  private static Pattern pattern(Kind kind, List<SpeedSummary> speeds, RunSummary run) {
    List<MarkedSpeed> names = speeds.stream().map(SpeedSummary::speed).toList();
    double[] means = speeds.stream().flatMapToDouble(s -> s.meanStops().stream()).toArray();
    return new Pattern(
        kind,
        names,
        signs(speeds, run, s -> !names.contains(s.speed())),
        Arrays.stream(means).min(),
        Arrays.stream(means).max());
  }

  private static List<Sign> signs(
      List<SpeedSummary> speeds, RunSummary run, Predicate<SpeedSummary> isOther) {
    List<Sign> signs = new ArrayList<>();
    int hung = speeds.stream().mapToInt(s -> s.count(Outcome.STUCK_OPEN)).sum();
    if (hung > 0) {
      signs.add(new Pattern.Hangs(hung, speeds.stream().mapToInt(SpeedSummary::tries).sum()));
    }
    scatter(speeds, run.speeds().stream().filter(isOther).toList()).ifPresent(signs::add);
    creep(speeds).ifPresent(signs::add);
    for (SpeedSummary speed : speeds) {
      double lag = speed.afterRestStops().orElse(0) - speed.meanStops().orElse(0);
      if (speed.afterRestStops().isPresent()
          && speed.meanStops().isPresent()
          && lag >= NOTICEABLE_STOPS) {
        signs.add(new Pattern.LagsAfterRest(speed.speed(), lag));
      }
    }
    return signs;
  }

  private static Optional<Sign> scatter(List<SpeedSummary> speeds, List<SpeedSummary> others) {
    List<Sample> own = samples(speeds);
    List<Sample> other = samples(others);
    if (own.isEmpty()) {
      return Optional.empty();
    }
    double sd = ScatterOfRuns.pooled(own).get();
    if (other.isEmpty()) {
      return sd > SpeedSummary.UNEVEN_STOPS
          ? Optional.of(new Pattern.Scatters(sd, OptionalDouble.empty()))
          : Optional.empty();
    }
    double otherSd = ScatterOfRuns.pooled(other).get();
    boolean more = ScatterOfRuns.test(own, other).known().filter(p -> p <= ALPHA).isPresent();
    return more && sd >= RATIO * otherSd
        ? Optional.of(new Pattern.Scatters(sd, OptionalDouble.of(otherSd)))
        : Optional.empty();
  }

  private static List<Sample> samples(List<SpeedSummary> speeds) {
    return speeds.stream()
        .map(SpeedSummary::errors)
        .filter(errors -> errors.n() >= ScatterOfRuns.LEAST_IN_GROUP)
        .toList();
  }

  /**
   * A creep that the speeds have in common: the sum of Kendall's S over them against its variance,
   * as the seasons are joined in the seasonal test of Hirsch, Slack and Smith (1982; from memory).
   */
  private static Optional<Sign> creep(List<SpeedSummary> speeds) {
    double sum = 0;
    double variance = 0;
    List<Double> slopes = new ArrayList<>();
    for (SpeedSummary speed : speeds) {
      var test = MannKendall.of(speed.errors()).known();
      var line = TheilSen.ofOrder(speed.errors(), SpeedSummary.LEVEL).known();
      if (test.isPresent() && line.isPresent()) {
        double n = speed.errors().n();
        sum += test.get().s();
        variance += n * (n - 1) * (2 * n + 5) / 18;
        slopes.add(line.get().slope());
      }
    }
    if (slopes.isEmpty() || sum <= 0) {
      return Optional.empty();
    }
    double z = (sum - 1) / Math.sqrt(variance);
    double p = new NormalDistribution(null, 0, 1).cumulativeProbability(-z);
    return p <= ALPHA
        ? Optional.of(new Pattern.Creeps(Sample.of(slopes).median().get(), p))
        : Optional.empty();
  }
}
