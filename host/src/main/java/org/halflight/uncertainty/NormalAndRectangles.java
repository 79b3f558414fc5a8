package org.halflight.uncertainty;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Quantiles of a sum of independent errors, one normal and any number of rectangular ones. Folded
 * one after the other on a fine grid, so that the same parts always bring the same figure; JCGM
 * 101:2008 does the same by random draws.
 */
public final class NormalAndRectangles {
  private static final int POINTS = 1001;

  /** A rectangle narrower than this many steps is as good as normal. */
  private static final double LEAST_STEPS = 4;

  /** Past this many standard deviations the normal part ends. */
  private static final double NORMAL_REACH = 6;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Standard deviation where the whole is as good as normal. */
  private final double sd;

  /** Chances on the grid; empty where the whole is as good as normal. */
  private final double[] chance;

  private final double reach;
  private final double step;

  private NormalAndRectangles(double sd, double[] chance, double reach, double step) {
    this.sd = sd;
    this.chance = chance;
    this.reach = reach;
    this.step = step;
  }

  /**
   * The quantile of the sum.
   *
   * @param p above 0.5 and below 0.9999
   * @param normal standard deviation of the normal part, 0 or more
   * @param bounds of the rectangular parts, each 0 or more; some part is above 0
   */
  public static double quantile(double p, double normal, double... bounds) {
    return of(normal, bounds).quantile(p);
  }

  /**
   * The sum.
   *
   * @param normal standard deviation of the normal part, 0 or more
   * @param bounds of the rectangular parts, each 0 or more; some part is above 0
   */
  public static NormalAndRectangles of(double normal, double... bounds) {
    double reach = NORMAL_REACH * normal;
    for (double bound : bounds) {
      reach += bound;
    }
    if (!(reach > 0)) {
      throw new IllegalArgumentException("nothing scatters");
    }
    double step = 2 * reach / (POINTS - 1);
    double variance = normal * normal;
    int wide = 0;
    for (double bound : bounds) {
      if (bound < LEAST_STEPS * step) {
        variance += bound * bound / 3;
      } else {
        wide++;
      }
    }
    double sd = Math.sqrt(variance);
    if (wide == 0) {
      return new NormalAndRectangles(sd, new double[0], reach, step);
    }
    double[] chance = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double x = -reach + i * step;
      chance[i] = sd > 0 ? NORMAL.cumulativeProbability(x / sd) : x < 0 ? 0 : x > 0 ? 1 : 0.5;
    }
    for (double bound : bounds) {
      if (bound >= LEAST_STEPS * step) {
        chance = folded(chance, bound, reach, step);
      }
    }
    return new NormalAndRectangles(sd, chance, reach, step);
  }

  /**
   * A quantile.
   *
   * @param p above 0.5 and below 0.9999
   */
  public double quantile(double p) {
    if (!(p > 0.5 && p < 0.9999)) {
      throw new IllegalArgumentException("a quantile between 0.5 and 0.9999, not " + p);
    }
    return chance.length == 0
        ? sd * NORMAL.inverseCumulativeProbability(p)
        : at(p, chance, reach, step);
  }

  /** The distribution of the sum with a rectangle: the mean of the old one over its width. */
  private static double[] folded(double[] chance, double bound, double reach, double step) {
    double[] area = new double[POINTS];
    for (int i = 1; i < POINTS; i++) {
      area[i] = area[i - 1] + step * (chance[i - 1] + chance[i]) / 2;
    }
    double[] folded = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double x = -reach + i * step;
      folded[i] =
          (areaTo(x + bound, chance, area, reach, step)
                  - areaTo(x - bound, chance, area, reach, step))
              / (2 * bound);
    }
    return folded;
  }

  private static double areaTo(
      double x, double[] chance, double[] area, double reach, double step) {
    double place = (x + reach) / step;
    if (place <= 0) {
      return 0;
    }
    if (place >= POINTS - 1) {
      return area[POINTS - 1] + (x - reach);
    }
    int i = (int) place;
    double part = place - i;
    double here = chance[i] + part * (chance[i + 1] - chance[i]);
    return area[i] + step * part * (chance[i] + here) / 2;
  }

  private static double at(double p, double[] chance, double reach, double step) {
    int i = POINTS / 2;
    while (i < POINTS - 2 && chance[i + 1] < p) {
      i++;
    }
    return -reach + step * (i + (p - chance[i]) / (chance[i + 1] - chance[i]));
  }
}
