package org.halflight.calibration;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Whether a rig still does what its profile says: reference pulses on a chart of individual values
 * and on one of their moving average (EWMA; NIST/SEMATECH e-Handbook 6.3.2), and the mean of them
 * all. The limits are such that a sound check of ten pulses shows a signal in 0.8 % of cases. The
 * customary rules for charts that go on for weeks (runs of two, four and eight on one side) are
 * left out: with ten pulses they signal in 7.8 %.
 *
 * @param limits of single values
 * @param points in order of time
 * @param signals what shows; empty is in control
 */
public record RigCheck(ControlLimits limits, List<Point> points, Set<Signal> signals) {
  /** Weight of the newest value in the moving average. */
  public static final double WEIGHT = 0.3;

  /** So many standard deviations off, a single pulse is a signal. */
  public static final double SINGLE_DEVIATIONS = 3.8;

  /** So many of its own standard deviations off, the mean of all pulses is one. */
  public static final double MEAN_DEVIATIONS = 2.9;

  /** So many of its own standard deviations off, the moving average is one. */
  public static final double AVERAGE_DEVIATIONS = 3.4;

  /** Least values. */
  public static final int LEAST = 5;

  /**
   * A value and the moving average with it.
   *
   * @param value as measured
   * @param average moving average
   */
  public record Point(double value, double average) {}

  /** What a chart can say. */
  public enum Signal {
    /** One value beyond {@link #SINGLE_DEVIATIONS}. */
    ONE_BEYOND_LIMITS,
    /** The mean of all beyond {@link #MEAN_DEVIATIONS}: a lasting shift. */
    MEAN_BEYOND_LIMITS,
    /** The moving average beyond {@link #AVERAGE_DEVIATIONS}: a shift in between. */
    AVERAGE_BEYOND_LIMITS,
    /** The two levels read apart, which their mean does not show: another lag than before. */
    LEVELS_APART
  }

  public RigCheck {
    points = List.copyOf(points);
    signals = Set.copyOf(signals);
  }

  /**
   * Holds values against limits.
   *
   * @param values one or more
   */
  public static RigCheck of(ControlLimits limits, double... values) {
    List<Point> points = new ArrayList<>();
    double average = limits.centre();
    double sum = 0;
    Set<Signal> signals = EnumSet.noneOf(Signal.class);
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("not a value: " + value);
      }
      sum += value;
      average = WEIGHT * value + (1 - WEIGHT) * average;
      points.add(new Point(value, average));
      if (Math.abs(value - limits.centre()) > SINGLE_DEVIATIONS * limits.sd()) {
        signals.add(Signal.ONE_BEYOND_LIMITS);
      }
      if (Math.abs(average - limits.centre()) > averageReach(limits)) {
        signals.add(Signal.AVERAGE_BEYOND_LIMITS);
      }
    }
    double meanReach = MEAN_DEVIATIONS * limits.sd() / Math.sqrt(values.length);
    if (Math.abs(sum / values.length - limits.centre()) > meanReach) {
      signals.add(Signal.MEAN_BEYOND_LIMITS);
    }
    return new RigCheck(limits, points, signals);
  }

  /** Whether nothing shows. */
  public boolean inControl() {
    return signals.isEmpty();
  }

  /** Half the width between the limits of the moving average once it has run in. */
  public static double averageReach(ControlLimits limits) {
    return AVERAGE_DEVIATIONS * averageSd(limits);
  }

  /** Standard deviation of the moving average once it has run in. */
  static double averageSd(ControlLimits limits) {
    return limits.sd() * Math.sqrt(WEIGHT / (2 - WEIGHT));
  }
}
