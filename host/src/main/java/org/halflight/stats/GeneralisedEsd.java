package org.halflight.stats;

import java.util.ArrayList;
import java.util.List;
import org.halflight.stats.Figure.Known;
import org.halflight.stats.Figure.NoScatter;
import org.halflight.stats.Figure.NotEnoughFirings;

/**
 * Firings that do not belong with the others: the generalised extreme studentised deviate test
 * (Rosner 1983). It points at them; leaving them out is a person's decision with a reason.
 *
 * @param candidates the firings furthest out, one after the other, each looked at without those
 *     before it; fewer than asked for when the rest are all alike
 * @param outliers how many of the first candidates are outliers
 */
public record GeneralisedEsd(List<Candidate> candidates, int outliers) {
  /** Least firings: the critical values are nearly right from 15 on (NIST/SEMATECH e-Handbook). */
  public static final int LEAST = 15;

  /** Most outliers that are looked for. */
  public static final int MOST = 10;

  /**
   * A firing that may be an outlier.
   *
   * @param index its place in the sample, from 0
   * @param value its value
   * @param r distance from the mean over standard deviation of those that are left
   * @param lambda the critical value that {@code r} is held against
   */
  public record Candidate(int index, double value, double r, double lambda) {}

  public GeneralisedEsd {
    candidates = List.copyOf(candidates);
  }

  /**
   * @param atMost the most outliers to look for, 1 to 10
   * @param alpha the chance to see any where there is none, above 0 and below 1
   */
  public static Figure<GeneralisedEsd> of(Sample sample, int atMost, double alpha) {
    if (atMost < 1 || atMost > MOST) {
      throw new IllegalArgumentException("looks for 1 to " + MOST + " outliers, not " + atMost);
    }
    Interval.checkLevel(alpha);
    int n = sample.n();
    if (n < LEAST) {
      return new NotEnoughFirings<>(n, LEAST);
    }
    double[] values = sample.values();
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      left.add(i);
    }
    List<Candidate> candidates = new ArrayList<>();
    int outliers = 0;
    for (int i = 1; i <= atMost; i++) {
      double[] rest = left.stream().mapToDouble(index -> values[index]).toArray();
      double mean = Sample.meanOf(rest);
      double sd = Sample.sdOf(rest);
      if (!(sd > 0)) {
        break;
      }
      int furthest = left.get(0);
      for (int index : left) {
        if (Math.abs(values[index] - mean) > Math.abs(values[furthest] - mean)) {
          furthest = index;
        }
      }
      double r = Math.abs(values[furthest] - mean) / sd;
      double lambda = lambda(n, i, alpha);
      candidates.add(new Candidate(furthest, values[furthest], r, lambda));
      if (r > lambda) {
        // The last candidate beyond its limit counts, not the first within: outliers hide others.
        outliers = i;
      }
      left.remove((Integer) furthest);
    }
    return candidates.isEmpty()
        ? new NoScatter<>()
        : new Known<>(new GeneralisedEsd(candidates, outliers));
  }

  private static double lambda(int n, int i, double alpha) {
    double p = 1 - alpha / (2 * (n - i + 1));
    double t = Student.quantile(p, n - i - 1);
    return (n - i) * t / Math.sqrt((n - i - 1 + t * t) * (n - i + 1));
  }
}
