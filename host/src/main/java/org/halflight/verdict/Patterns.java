package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.halflight.session.Outcome;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.MannKendall;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;
import org.halflight.verdict.Pattern.Kind;
import org.halflight.verdict.Pattern.Range;
import org.halflight.verdict.Pattern.Sign;

/**
 * Sees what stands out in a run. Where the lines between right and off are drawn is common
 * practice, no source, or our own limit.
 */
public final class Patterns {
  /** Half of the usual tolerance: from here on an error is more than the usual spread of a dial. */
  private static final double NOTICEABLE_STOPS = 1 / 6.0;

  /** The same at the top speed, which is usually somewhat slow and has half a stop. */
  private static final double NOTICEABLE_AT_TOP_STOPS = 1 / 4.0;

  /** Chance of seeing a creep of one half of the dial where there is none. */
  private static final double ALPHA = 0.01;

  /** A creep by less than this from firing to firing is nothing to look for; our own limit. */
  private static final double LEAST_CREEP_STOPS = 0.02;

  /** Of fewer firings a scatter says too little. */
  private static final int LEAST_FOR_SCATTER = 3;

  /** A first firing after rest lies this many times the scatter of the others beside their mean. */
  private static final double AFTER_REST_SDS = 3;

  private Patterns() {}

  /** The pattern of a run. */
  public static Pattern of(RunSummary run) {
    List<SpeedSummary> speeds = run.speeds();
    List<Sign> signs = signs(run);
    List<SpeedSummary> timed = speeds.stream().filter(Patterns::isKnown).toList();
    List<SpeedSummary> off =
        timed.stream()
            .filter(s -> isOff(s, 1, isTop(s, speeds)) || isOff(s, -1, isTop(s, speeds)))
            .toList();
    if (speeds.stream().filter(s -> isKnown(s) || hasNoTime(s)).count()
        < CommonShift.LEAST_SPEEDS) {
      return pattern(Kind.TOO_LITTLE, List.of(), timed, signs);
    }
    if (off.isEmpty()) {
      return pattern(
          signs.isEmpty() ? Kind.NOTHING_STANDS_OUT : Kind.NO_MEAN_OFF, off, timed, signs);
    }
    if (timed.size() >= CommonShift.LEAST_SPEEDS) {
      if (timed.stream().allMatch(s -> leans(s, 1))) {
        return pattern(Kind.ALL_SLOW, timed, timed, signs);
      }
      if (timed.stream().allMatch(s -> leans(s, -1))) {
        return pattern(Kind.ALL_FAST, timed, timed, signs);
      }
    }
    if (off.size() == 1) {
      SpeedSummary one = off.get(0);
      boolean top = isTop(one, speeds) && isLong(one);
      return pattern(top ? Kind.TOP_SLOW : Kind.ONE_ALONE, off, timed, signs);
    }
    long slow = timed.stream().filter(s -> SlowSpeedTrain.governs(s.speed())).count();
    boolean half =
        off.stream().allMatch(s -> SlowSpeedTrain.governs(s.speed()) && isLong(s))
            && 2L * off.size() >= slow
            && slow < timed.size();
    return pattern(half ? Kind.SLOW_SPEEDS : Kind.SOME_SPEEDS, off, timed, signs);
  }

  private static boolean isTop(SpeedSummary speed, List<SpeedSummary> speeds) {
    return speed.speed().equals(speeds.get(speeds.size() - 1).speed());
  }

  private static boolean isKnown(SpeedSummary speed) {
    return speed.meanIntervalStops().isPresent();
  }

  private static boolean hasNoTime(SpeedSummary speed) {
    return speed.outcomes().keySet().stream().anyMatch(outcome -> outcome != Outcome.TIMED);
  }

  private static boolean isLong(SpeedSummary speed) {
    return speed.meanStops().orElse(0) > 0;
  }

  /** Beyond its tolerance, or surely off by more than is usual. */
  private static boolean isOff(SpeedSummary speed, int side, boolean top) {
    double noticeable = top ? NOTICEABLE_AT_TOP_STOPS : NOTICEABLE_STOPS;
    boolean beyond = speed.verdict() == (side > 0 ? Verdict.SLOW : Verdict.FAST);
    return beyond || (side * speed.meanStops().orElse(0) >= noticeable && isShown(speed, side));
  }

  /** Off to one side by half of what is noticeable or more: enough beside speeds that are off. */
  private static boolean leans(SpeedSummary speed, int side) {
    return side * speed.meanStops().orElse(0) >= NOTICEABLE_STOPS / 2 && isShown(speed, side);
  }

  private static boolean isShown(SpeedSummary speed, int side) {
    return speed
        .meanIntervalStops()
        .filter(interval -> side > 0 ? interval.low() > 0 : interval.high() < 0)
        .isPresent();
  }

  private static Pattern pattern(
      Kind kind, List<SpeedSummary> off, List<SpeedSummary> timed, List<Sign> signs) {
    return new Pattern(
        kind,
        names(off),
        range(off, SpeedSummary::meanStops),
        range(timed.stream().filter(s -> !off.contains(s)).toList(), SpeedSummary::meanStops),
        signs);
  }

  private static List<MarkedSpeed> names(List<SpeedSummary> speeds) {
    return speeds.stream().map(SpeedSummary::speed).toList();
  }

  private interface Value {
    OptionalDouble of(SpeedSummary speed);
  }

  private static Optional<Range> range(List<SpeedSummary> speeds, Value value) {
    double[] values = speeds.stream().flatMapToDouble(s -> value.of(s).stream()).toArray();
    return values.length == 0
        ? Optional.empty()
        : Optional.of(
            new Range(
                Arrays.stream(values).min().getAsDouble(),
                Arrays.stream(values).max().getAsDouble()));
  }

  private static List<Sign> signs(RunSummary run) {
    List<Sign> signs = new ArrayList<>();
    for (Outcome outcome : RunStatistics.gravestFirst()) {
      List<SpeedSummary> at = run.speeds().stream().filter(s -> s.count(outcome) > 0).toList();
      if (!at.isEmpty()) {
        signs.add(
            new Pattern.WithoutTime(
                outcome,
                names(at),
                at.stream().mapToInt(s -> s.count(outcome)).sum(),
                at.stream().mapToInt(SpeedSummary::tries).sum()));
      }
    }
    List<SpeedSummary> uneven =
        run.speeds().stream()
            .filter(s -> s.isUneven() && s.errors().n() >= LEAST_FOR_SCATTER)
            .toList();
    range(uneven, SpeedSummary::scatterStops)
        .ifPresent(scatter -> signs.add(new Pattern.Scatters(names(uneven), scatter)));
    for (boolean slow : new boolean[] {true, false}) {
      creep(run.speeds().stream().filter(s -> SlowSpeedTrain.governs(s.speed()) == slow).toList())
          .ifPresent(signs::add);
    }
    run.speeds().forEach(speed -> afterRest(speed).ifPresent(signs::add));
    return signs;
  }

  private static Optional<Sign> afterRest(SpeedSummary speed) {
    if (speed.afterRestStops().isEmpty() || speed.meanStops().isEmpty()) {
      return Optional.empty();
    }
    double beside = speed.afterRestStops().getAsDouble() - speed.meanStops().getAsDouble();
    double least = Math.max(NOTICEABLE_STOPS, AFTER_REST_SDS * speed.scatterStops().orElse(0));
    return Math.abs(beside) >= least
        ? Optional.of(new Pattern.UnlikeAfterRest(speed.speed(), beside))
        : Optional.empty();
  }

  /**
   * A creep that the speeds of one half of the dial have in common: the sum of Kendall's S over
   * them against its variance, as the seasons are joined in the seasonal test of Hirsch, Slack and
   * Smith (1982; from memory).
   */
  private static Optional<Sign> creep(List<SpeedSummary> speeds) {
    double sum = 0;
    double variance = 0;
    List<Double> slopes = new ArrayList<>();
    List<MarkedSpeed> names = new ArrayList<>();
    for (SpeedSummary speed : speeds) {
      var test = MannKendall.of(speed.errors()).known();
      var line = TheilSen.ofOrder(speed.errors(), SpeedSummary.LEVEL).known();
      if (test.isPresent() && line.isPresent()) {
        double n = speed.errors().n();
        sum += test.get().s();
        variance += n * (n - 1) * (2 * n + 5) / 18;
        slopes.add(line.get().slope());
        names.add(speed.speed());
      }
    }
    if (slopes.isEmpty()) {
      return Optional.empty();
    }
    double slope = Sample.of(slopes).median().get();
    double z = Math.max(0, Math.abs(sum) - 1) / Math.sqrt(variance);
    double p = 2 * new NormalDistribution(null, 0, 1).cumulativeProbability(-z);
    return p <= ALPHA && Math.abs(slope) >= LEAST_CREEP_STOPS
        ? Optional.of(new Pattern.Creeps(names, slope, p))
        : Optional.empty();
  }
}
