package org.halflight.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * The variance of one firing at a speed, drawn towards that of other speeds of the same run which
 * are made by the same parts. Three to five firings of one speed tell little of its scatter; the
 * others lend it degrees of freedom.
 *
 * @param variance of one firing
 * @param degrees of freedom
 */
public record SharedScatter(double variance, double degrees) {
  /** What the other speeds weigh at the least, in degrees of freedom. */
  static final double LEAST_WEIGHT = 4;

  /** What they weigh at the most. */
  static final double MOST_WEIGHT = 8;

  public SharedScatter {
    if (!(variance >= 0) || !(degrees > 0)) {
      throw new IllegalArgumentException(variance + " of " + degrees + " degrees of freedom");
    }
  }

  /** Of one speed by itself: the variance within its samples, whatever their means. */
  public static SharedScatter within(List<Sample> samples) {
    double squares = 0;
    int degrees = 0;
    for (Sample sample : samples) {
      squares += Sample.squaresAroundMean(sample.values());
      degrees += sample.n() - 1;
    }
    return new SharedScatter(squares / degrees, degrees);
  }

  /**
   * Each drawn towards the pooled variance of all others, which weighs as much as its own and at
   * least {@value #LEAST_WEIGHT}, at most {@value #MOST_WEIGHT} degrees of freedom, never more than
   * the others have.
   *
   * @param own of each speed by itself
   */
  public static List<SharedScatter> drawnTogether(List<SharedScatter> own) {
    double squares = own.stream().mapToDouble(s -> s.variance * s.degrees).sum();
    double degrees = own.stream().mapToDouble(SharedScatter::degrees).sum();
    List<SharedScatter> drawn = new ArrayList<>();
    for (SharedScatter speed : own) {
      double others = degrees - speed.degrees;
      double weight = Math.min(others, weight(speed.degrees));
      double pooled =
          others > 0
              ? Math.max(0, squares - speed.variance * speed.degrees) / others
              : speed.variance;
      drawn.add(
          new SharedScatter(
              (speed.degrees * speed.variance + weight * pooled) / (speed.degrees + weight),
              speed.degrees + weight));
    }
    return drawn;
  }

  /** The weight that enough other speeds get, in degrees of freedom. */
  public static double weight(double ownDegrees) {
    return Math.min(MOST_WEIGHT, Math.max(LEAST_WEIGHT, ownDegrees));
  }

  /** Standard deviation of one firing. */
  public double sd() {
    return Math.sqrt(variance);
  }
}
