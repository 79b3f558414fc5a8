package org.halflight.shuttermodel;

import java.util.SplittableRandom;

/**
 * Random draws that are the same for the same seed on every machine and every version of Java. Not
 * safe for use by several threads.
 *
 * <p>The normal deviates are made here (G. E. P. Box and M. E. Muller, 1958) with {@link
 * StrictMath}, because the algorithm behind the platform's own may change.
 */
public final class SeededDraws {
  private final SplittableRandom source;
  private double spare = Double.NaN;

  /**
   * @param seed chooses the draws
   */
  public SeededDraws(long seed) {
    // Mixed first: generators of this kind overlap when their seeds differ by its step.
    source = new SplittableRandom(mixed(seed));
  }

  /** A seed that depends on two numbers, for draws that belong to a part of something seeded. */
  public static long seedOf(long seed, long part) {
    return mixed(mixed(seed) + part);
  }

  /** Evenly spread from 0 (included) to 1 (excluded). */
  public double uniform() {
    return source.nextDouble();
  }

  /** A whole number from 0 to {@code most}, both included. */
  public int upTo(int most) {
    return source.nextInt(most + 1);
  }

  /** Normally distributed, mean 0 and standard deviation 1. */
  public double normal() {
    if (!Double.isNaN(spare)) {
      double drawn = spare;
      spare = Double.NaN;
      return drawn;
    }
    double radius = Math.sqrt(-2 * StrictMath.log(1 - source.nextDouble()));
    double angle = 2 * Math.PI * source.nextDouble();
    spare = radius * StrictMath.sin(angle);
    return radius * StrictMath.cos(angle);
  }

  /** The finalizer of MurmurHash3 (A. Appleby, public domain): every bit depends on every bit. */
  private static long mixed(long bits) {
    long mixed = bits + 0x9E37_79B9_7F4A_7C15L;
    mixed = (mixed ^ (mixed >>> 33)) * 0xFF51_AFD7_ED55_8CCDL;
    mixed = (mixed ^ (mixed >>> 33)) * 0xC4CE_B9FE_1A85_EC53L;
    return mixed ^ (mixed >>> 33);
  }
}
