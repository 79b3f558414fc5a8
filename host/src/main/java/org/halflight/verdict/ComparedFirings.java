package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.stats.MeanAllowance;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;
import org.halflight.stats.SharedScatter;

/**
 * The firings of one speed that two runs are compared by. Of unequal numbers the first of each
 * count, because errors creep and warm up: later firings of one run have no partner in the other.
 * Of repeated runs as many count as both sides have.
 *
 * @param speed the marked speed
 * @param before errors of the earlier run, in stops; of repeated runs, each by itself
 * @param after the same of the later run, read as the earlier one is; as many samples, each as long
 */
record ComparedFirings(MarkedSpeed speed, List<Sample> before, List<Sample> after) {
  ComparedFirings {
    before = List.copyOf(before);
    after = List.copyOf(after);
  }

  static ComparedFirings of(
      SpeedSummary before, RunsBehind behindBefore, SpeedSummary after, RunsBehind behindAfter) {
    List<Sample> all = behindBefore.at(before);
    List<Sample> others = behindAfter.at(after);
    int runs = Math.min(all.size(), others.size());
    // The first of the earlier runs and the last of the later ones: as left holds once it is dry.
    others = others.subList(others.size() - runs, others.size());
    double between = Stops.between(after.referenceSeconds(), before.referenceSeconds());
    List<Sample> first = new ArrayList<>();
    List<Sample> second = new ArrayList<>();
    for (int i = 0; i < runs; i++) {
      int firings = Math.min(all.get(i).n(), others.get(i).n());
      if (firings >= MeanShift.LEAST) {
        first.add(all.get(i).first(firings));
        second.add(others.get(i).first(firings).plus(between));
      }
    }
    return new ComparedFirings(before.speed(), first, second);
  }

  /** Whether there is anything to compare. */
  boolean isEnough() {
    return !before.isEmpty();
  }

  /** Firings of each run. */
  int firings() {
    return before.stream().mapToInt(Sample::n).sum();
  }

  SharedScatter scatterBefore() {
    return SharedScatter.within(before);
  }

  SharedScatter scatterAfter() {
    return SharedScatter.within(after);
  }

  double meanBefore() {
    return mean(before);
  }

  double meanAfter() {
    return mean(after);
  }

  /** All firings of the earlier run in one sample. */
  Sample allBefore() {
    return Sample.joined(before);
  }

  /** All firings of the later run in one sample. */
  Sample allAfter() {
    return Sample.joined(after);
  }

  /**
   * The part of the variance of a mean that other speeds do not share, in squares of the scatter of
   * one firing. The mean is that of the means of the repeated runs.
   */
  double ownPart(MeanAllowance allowance) {
    double count = before.size();
    return before.stream().mapToDouble(run -> allowance.own(run.n())).sum() / (count * count);
  }

  /** The part that all speeds of a run may share, likewise. */
  double runPart(MeanAllowance allowance) {
    return allowance.ofRun() / before.size();
  }

  private static double mean(List<Sample> runs) {
    return runs.stream().mapToDouble(run -> run.mean().get()).average().orElseThrow();
  }
}
