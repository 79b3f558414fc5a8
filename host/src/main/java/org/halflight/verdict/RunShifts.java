package org.halflight.verdict;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.halflight.stats.Figure;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.MeanShift;
import org.halflight.stats.SharedScatter;

/**
 * The shift of each speed between two runs, with what firings that depend on one another and runs
 * that lie off as a whole are allowed ({@link MeanAllowance}). The scatter of each speed is drawn
 * towards that of the others of its half of the dial: the slow-speed train's, or the rest.
 */
final class RunShifts {
  private RunShifts() {}

  /**
   * The shifts in the order of the speeds.
   *
   * @param rigVariances what two rigs may differ by at each speed, in squares of stops; zeros where
   *     both runs were made with one
   * @param before allowance for the earlier run
   * @param after allowance for the later run
   */
  static List<Figure<Estimate>> of(
      List<ComparedFirings> speeds,
      double[] rigVariances,
      MeanAllowance before,
      MeanAllowance after) {
    List<SharedScatter> first = drawn(speeds, ComparedFirings::scatterBefore);
    List<SharedScatter> second = drawn(speeds, ComparedFirings::scatterAfter);
    List<Figure<Estimate>> shifts = new ArrayList<>();
    for (int i = 0; i < speeds.size(); i++) {
      ComparedFirings speed = speeds.get(i);
      if (!speed.isEnough()) {
        shifts.add(new NotEnoughFirings<>(0, MeanShift.LEAST));
      } else if (!(first.get(i).variance() + second.get(i).variance() > 0)) {
        shifts.add(new NoScatter<>());
      } else {
        shifts.add(
            new Known<>(
                shift(speed, first.get(i), before, second.get(i), after, rigVariances[i])));
      }
    }
    return shifts;
  }

  private static Estimate shift(
      ComparedFirings speed,
      SharedScatter first,
      MeanAllowance before,
      SharedScatter second,
      MeanAllowance after,
      double rigVariance) {
    double ownBefore = first.variance() * speed.ownPart(before);
    double ownAfter = second.variance() * speed.ownPart(after);
    double runBefore = first.variance() * speed.runPart(before);
    double runAfter = second.variance() * speed.runPart(after);
    double varianceBefore = ownBefore + runBefore;
    double varianceAfter = ownAfter + runAfter;
    double sum = varianceBefore + varianceAfter;
    int firings = speed.before().get(0).n();
    double degrees =
        sum
            * sum
            / (varianceBefore * varianceBefore / before.degrees(firings, first.degrees())
                + varianceAfter * varianceAfter / after.degrees(firings, second.degrees()));
    return new Estimate(
        speed.speed(),
        speed.meanAfter() - speed.meanBefore(),
        ownBefore + ownAfter,
        runBefore + runAfter,
        rigVariance,
        degrees);
  }

  /** Null where a speed has too few firings. */
  private static List<SharedScatter> drawn(
      List<ComparedFirings> speeds, Function<ComparedFirings, SharedScatter> own) {
    List<SharedScatter> drawn = new ArrayList<>(Collections.nCopies(speeds.size(), null));
    for (boolean slow : new boolean[] {true, false}) {
      List<Integer> half = new ArrayList<>();
      for (int i = 0; i < speeds.size(); i++) {
        if (speeds.get(i).isEnough() && SlowSpeedTrain.governs(speeds.get(i).speed()) == slow) {
          half.add(i);
        }
      }
      List<SharedScatter> together =
          SharedScatter.drawnTogether(half.stream().map(i -> own.apply(speeds.get(i))).toList());
      for (int i = 0; i < half.size(); i++) {
        drawn.set(half.get(i), together.get(i));
      }
    }
    return drawn;
  }
}
