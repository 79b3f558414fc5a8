package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;
import org.halflight.stats.SharedScatter;
import org.halflight.stats.Student;
import org.halflight.verdict.Stage.Fired;
import org.halflight.verdict.StageChange.OfSpeed;
import org.halflight.verdict.StageChange.Shown;

/**
 * How much one firing of a speed scatters in the stages of an assembly.
 *
 * @param scatter of one firing, in stops
 */
record StageScatter(SharedScatter scatter) {
  /**
   * A stage lies off as a whole by 0.4 of the scatter of its firings, which are independent: our
   * assumption. Stages follow one another within the hour, so it is less than {@link
   * MeanAllowance#USUAL} has for runs of different days.
   */
  static final MeanAllowance ALLOWANCE = new MeanAllowance(1, 0.15);

  /** Scatter of one slow firing of a shutter in order, in stops: our assumption. */
  static final double USUAL_SLOW_SD = 0.04;

  /** What that weighs, in degrees of freedom. */
  static final double USUAL_SLOW_DEGREES = 4;

  /** Least scatter of one firing at the top speed, in stops: our assumption. */
  static final double USUAL_TOP_SD = 0.06;

  /** Median distance of two firings to the standard deviation of one: 1 / (0.6745 sqrt 2). */
  private static final double DISTANCE_TO_SD = 1.0484;

  private static final int LEAST_DISTANCES = 3;
  private static final double MEAN_ALPHA = 0.05;

  /** Of the slow speed: pooled within the stages, with a little of what is usual. */
  static StageScatter slow(List<Stage> stages) {
    List<Sample> samples =
        stages.stream().map(stage -> stage.slow().errors()).filter(s -> s.n() > 1).toList();
    double squares = USUAL_SLOW_DEGREES * USUAL_SLOW_SD * USUAL_SLOW_SD;
    double degrees = USUAL_SLOW_DEGREES;
    if (!samples.isEmpty()) {
      SharedScatter within = SharedScatter.within(samples);
      squares += within.variance() * within.degrees();
      degrees += within.degrees();
    }
    return new StageScatter(new SharedScatter(squares / degrees, degrees));
  }

  /**
   * Of the top speed, fired once: no less than the slow one's or than what is usual, nor than the
   * firings of most stages differ from those of the stage before.
   */
  static StageScatter top(List<Stage> stages, StageScatter slow) {
    List<Double> means =
        stages.stream().flatMap(s -> s.top().errors().mean().known().stream()).toList();
    List<Double> distances = new ArrayList<>();
    for (int i = 1; i < means.size(); i++) {
      distances.add(Math.abs(means.get(i) - means.get(i - 1)));
    }
    double seen =
        distances.size() < LEAST_DISTANCES
            ? 0
            : DISTANCE_TO_SD * Sample.of(distances).median().known().orElse(0.0);
    double sd = Math.max(Math.max(USUAL_TOP_SD, slow.scatter.sd()), seen);
    return new StageScatter(new SharedScatter(sd * sd, slow.scatter.degrees()));
  }

  /** Half of the 95 % interval of a mean of so many firings, in stops. */
  double plusMinus(int firings) {
    return Math.sqrt(scatter.variance() * ALLOWANCE.ofMean(firings))
        * Student.quantile(1 - MEAN_ALPHA / 2, scatter.degrees());
  }

  /**
   * Compares one speed of two stages.
   *
   * @param isKnown whether both may be compared
   * @param alpha chance of calling a change where none is
   * @param leastStops the least change that matters
   */
  OfSpeed compare(Fired before, Fired after, boolean isKnown, double alpha, double leastStops) {
    if (!isKnown || before.errors().n() == 0 || after.errors().n() == 0) {
      return new OfSpeed(after.speed(), 0, 0, Shown.NOT_KNOWN);
    }
    double variance =
        scatter.variance()
            * (ALLOWANCE.ofMean(before.errors().n()) + ALLOWANCE.ofMean(after.errors().n()));
    double stops = after.errors().mean().get() - before.errors().mean().get();
    MeanShift shift = MeanShift.of(stops, Math.sqrt(variance), scatter.degrees(), 1 - alpha);
    double plusMinus = shift.interval().high() - stops;
    Shown shown =
        Math.abs(stops) < Math.max(plusMinus, leastStops)
            ? Shown.NO_CHANGE
            : stops > 0 ? Shown.SLOWER : Shown.FASTER;
    return new OfSpeed(after.speed(), stops, plusMinus, shown);
  }
}
