package org.halflight.validation.invented;

import java.util.SplittableRandom;

/** What is drawn at random for one session, from its seed. */
public final class Draws {
  private final SplittableRandom random;

  public Draws(long seed) {
    random = new SplittableRandom(seed);
  }

  /** Draws of one case of many, far from those of its neighbours. */
  public static Draws of(long seed, long number) {
    return new Draws(seed * 0x9E3779B97F4A7C15L + number);
  }

  /** Normal with mean 0 and deviation 1. */
  public double normal() {
    return random.nextGaussian();
  }

  /** Above 0, with a median and a deviation of its natural logarithm. */
  public double around(double median, double spread) {
    return median * Math.exp(spread * normal());
  }

  /** Evenly between two bounds. */
  public double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  double either(double bound) {
    return between(-bound, bound);
  }

  boolean coin() {
    return random.nextBoolean();
  }

  public int upTo(int most) {
    return random.nextInt(most + 1);
  }

  public boolean chance(double of) {
    return random.nextDouble() < of;
  }
}
