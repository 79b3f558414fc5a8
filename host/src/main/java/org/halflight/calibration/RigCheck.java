package org.halflight.calibration;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Whether a rig still does what its profile says: reference pulses on a chart of individual values
 * and on one of their moving average (EWMA), with the customary signal rules (Western Electric
 * 1956; NIST/SEMATECH e-Handbook 6.3.2).
 *
 * @param limits of single values
 * @param points in order of time
 * @param signals what shows; empty is in control
 */
public record RigCheck(ControlLimits limits, List<Point> points, Set<Signal> signals) {
  /** Weight of the newest value in the moving average. */
  public static final double WEIGHT = 0.3;

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
    /** One value beyond three standard deviations. */
    ONE_BEYOND_THREE,
    /** Two of three beyond two, on one side. */
    TWO_OF_THREE_BEYOND_TWO,
    /** Four of five beyond one, on one side. */
    FOUR_OF_FIVE_BEYOND_ONE,
    /** Eight on one side of the middle. */
    EIGHT_ON_ONE_SIDE,
    /** The moving average beyond its limits: a small lasting shift. */
    AVERAGE_BEYOND_LIMITS,
    /** The two levels read apart, which their mean does not show: another lag than before. */
    LEVELS_APART
  }

  public RigCheck {
    points = List.copyOf(points);
    signals = Set.copyOf(signals);
  }

  /** Holds values against limits. */
  public static RigCheck of(ControlLimits limits, double... values) {
    List<Point> points = new ArrayList<>();
    double average = limits.centre();
    Set<Signal> signals = EnumSet.noneOf(Signal.class);
    for (double value : values) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("not a value: " + value);
      }
      average = WEIGHT * value + (1 - WEIGHT) * average;
      points.add(new Point(value, average));
      if (Math.abs(average - limits.centre()) > averageReach(limits)) {
        signals.add(Signal.AVERAGE_BEYOND_LIMITS);
      }
    }
    for (int side = -1; side <= 1; side += 2) {
      double[] away = new double[values.length];
      for (int i = 0; i < away.length; i++) {
        away[i] = side * (values[i] - limits.centre()) / limits.sd();
      }
      note(signals, Signal.ONE_BEYOND_THREE, away, 1, 1, 3);
      note(signals, Signal.TWO_OF_THREE_BEYOND_TWO, away, 3, 2, 2);
      note(signals, Signal.FOUR_OF_FIVE_BEYOND_ONE, away, 5, 4, 1);
      note(signals, Signal.EIGHT_ON_ONE_SIDE, away, 8, 8, 0);
    }
    return new RigCheck(limits, points, signals);
  }

  /** Whether nothing shows. */
  public boolean inControl() {
    return signals.isEmpty();
  }

  /** Half the width between the limits of the moving average once it has run in. */
  public static double averageReach(ControlLimits limits) {
    return 3 * limits.sd() * Math.sqrt(WEIGHT / (2 - WEIGHT));
  }

  private static void note(
      Set<Signal> signals, Signal signal, double[] away, int among, int least, double beyond) {
    for (int from = 0; from + among <= away.length; from++) {
      int count = 0;
      for (int i = from; i < from + among; i++) {
        count += away[i] > beyond ? 1 : 0;
      }
      if (count >= least) {
        signals.add(signal);
      }
    }
  }
}
