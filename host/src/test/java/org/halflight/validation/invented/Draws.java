package org.halflight.validation.invented;

import java.util.SplittableRandom;

/** What is drawn at random for one session, from its seed. */
public final class Draws {
  private final SplittableRandom random;

  public Draws(long seed) {
    random = new SplittableRandom(seed);
  }

  /** Normal with mean 0 and deviation 1. */
  public double normal() {
    return random.nextGaussian();
  }

  /** Above 0, with a median and a deviation of its natural logarithm. */
  double around(double median, double spread) {
    return median * Math.exp(spread * normal());
  }

  /** Evenly between two bounds. */
  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  double either(double bound) {
    return between(-bound, bound);
  }

  boolean coin() {
    return random.nextBoolean();
  }

  int upTo(int most) {
    return random.nextInt(most + 1);
  }

  boolean chance(double of) {
    return random.nextDouble() < of;
  }
}
