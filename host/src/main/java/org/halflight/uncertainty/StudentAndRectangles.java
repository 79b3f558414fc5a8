package org.halflight.uncertainty;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.halflight.stats.Student;

/**
 * The sum of independent errors: one that scatters as Student's t, normal where its degrees of
 * freedom are endless, and any number of rectangular ones. Folded one after the other on a fine
 * grid, so that the same parts always bring the same figure; JCGM 101:2008 does the same by random
 * draws.
 */
final class StudentAndRectangles {
  private static final int POINTS = 1001;

  /** A rectangle narrower than this many steps is as good as normal. */
  private static final double LEAST_STEPS = 4;

  /** The tails end where no more than this lies beyond either end. */
  private static final double MOST = 0.9999;

  /** With fewer degrees of freedom the tails reach too far for a grid. */
  static final int LEAST_DEGREES = 3;

  /** More are cut to so many, which errs to the safe side by less than 1.3 %. */
  private static final double MANY_DEGREES = 100;

  /** From here on Student's t is as good as normal. */
  private static final double AS_GOOD_AS_NORMAL = 1000;

  private static final Map<Double, Table> TABLES = new ConcurrentHashMap<>();

  /** Student's t on a grid of {@link #POINTS}. */
  private static final class Table {
    private final double degrees;

    /** From the middle to either end. */
    private final double reach;

    private final double[] chance = new double[POINTS];

    Table(double degrees) {
      this.degrees = degrees;
      reach = Student.quantile(MOST, degrees);
      for (int i = 0; i < POINTS; i++) {
        chance[i] = Student.below(reach * (2.0 * i / (POINTS - 1) - 1), degrees);
      }
    }

    /** The chance that it stays below {@code t}. */
    double below(double t) {
      return between(chance, (t / reach + 1) * (POINTS - 1) / 2);
    }
  }

  /** Scale of the scattering part where there are no rectangles beside it. */
  private final double scale;

  private final double degrees;

  /** Chances on the grid; empty without rectangles. */
  private final double[] chance;

  private final double reach;
  private final double step;

  private StudentAndRectangles(
      double scale, double degrees, double[] chance, double reach, double step) {
    this.scale = scale;
    this.degrees = degrees;
    this.chance = chance;
    this.reach = reach;
    this.step = step;
  }

  /**
   * The sum.
   *
   * @param scale standard uncertainty of the part that scatters, 0 or more
   * @param degreesOfFreedom of it, {@link #LEAST_DEGREES} or more; cut to a whole number
   * @param bounds of the rectangular parts, each 0 or more; some part is above 0
   */
  static StudentAndRectangles of(double scale, double degreesOfFreedom, double... bounds) {
    if (!(degreesOfFreedom >= LEAST_DEGREES)) {
      throw new IllegalArgumentException("too few degrees of freedom: " + degreesOfFreedom);
    }
    double reach = table(degreesOfFreedom).reach * scale;
    for (double bound : bounds) {
      reach += bound;
    }
    if (!(reach > 0)) {
      throw new IllegalArgumentException("nothing scatters");
    }
    double step = 2 * reach / (POINTS - 1);
    double variance = scale * scale;
    int wide = 0;
    for (double bound : bounds) {
      if (bound < LEAST_STEPS * step) {
        variance += bound * bound / 3;
      } else {
        wide++;
      }
    }
    double whole = Math.sqrt(variance);
    // Narrow rectangles are as good as normal and bring no doubt of their own (JCGM 100, G.4).
    Table student =
        table(scale > 0 ? degreesOfFreedom * Math.pow(whole / scale, 4) : Double.POSITIVE_INFINITY);
    if (wide == 0) {
      return new StudentAndRectangles(whole, student.degrees, new double[0], reach, step);
    }
    double[] chance = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      double x = -reach + i * step;
      chance[i] = whole > 0 ? student.below(x / whole) : x < 0 ? 0 : x > 0 ? 1 : 0.5;
    }
    for (double bound : bounds) {
      if (bound >= LEAST_STEPS * step) {
        chance = folded(chance, bound, reach, step);
      }
    }
    return new StudentAndRectangles(whole, student.degrees, chance, reach, step);
  }

  private static Table table(double degreesOfFreedom) {
    double degrees =
        degreesOfFreedom >= AS_GOOD_AS_NORMAL
            ? Double.POSITIVE_INFINITY
            : Math.min(MANY_DEGREES, Math.floor(degreesOfFreedom));
    return TABLES.computeIfAbsent(degrees, Table::new);
  }

  /** The chance that the sum stays below {@code x}. */
  double below(double x) {
    if (chance.length == 0) {
      return scale > 0 ? Student.below(x / scale, degrees) : x < 0 ? 0 : 1;
    }
    return between(chance, (x + reach) / step);
  }

  /** The chance at a place between two points of the grid; 0 and 1 beyond its ends. */
  private static double between(double[] chance, double place) {
    if (place <= 0) {
      return 0;
    }
    if (place >= POINTS - 1) {
      return 1;
    }
    int i = (int) place;
    return chance[i] + (place - i) * (chance[i + 1] - chance[i]);
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
}
