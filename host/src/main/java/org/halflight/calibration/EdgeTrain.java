package org.halflight.calibration;

import org.halflight.profile.ClockRate;
import org.halflight.stats.LineFit;
import org.halflight.time.TickRate;

/**
 * Edges of known frequency, as an outside reference of the clock: a pulse per second, a generator,
 * or the light of a lamp on the mains. The ticks of the edges against their number make a line, and
 * its slope is the period.
 *
 * @param hertz true frequency of the edges
 * @param standardUncertaintyPpm of that frequency
 * @param source what makes them
 */
public record EdgeTrain(double hertz, double standardUncertaintyPpm, ClockRate.Source source) {
  /** Least edges. */
  public static final int LEAST = 10;

  /**
   * The mains keep to 50 mHz of 50 Hz most of the time (from memory; the grid's operators publish
   * it): taken as evenly spread, 577 ppm.
   */
  public static final double MAINS_STANDARD_UNCERTAINTY_PPM = 1e6 * 0.05 / 50 / Math.sqrt(3);

  /** An edge further from its place than this share of the period belongs to something else. */
  private static final double GREATEST_MISS = 0.1;

  /** What edges come to. */
  public sealed interface Outcome {}

  /** A rate. */
  public record Found(ClockRate rate) implements Outcome {}

  /** Not enough edges. */
  public record TooFew(int edges) implements Outcome {}

  /** The edges do not come at that frequency. */
  public record OtherFrequency() implements Outcome {}

  public EdgeTrain {
    if (!(hertz > 0 && standardUncertaintyPpm >= 0)) {
      throw new IllegalArgumentException("no frequency: " + hertz);
    }
  }

  /** Edges of a lamp, two in each cycle of the mains. */
  public static EdgeTrain ofMains(double mainsHertz) {
    return new EdgeTrain(
        2 * mainsHertz, MAINS_STANDARD_UNCERTAINTY_PPM, ClockRate.Source.MAINS_LAMP);
  }

  /**
   * The rate of the board that stamped the edges. Missing edges do no harm.
   *
   * @param ticks of the edges of one direction, rising
   * @param nominal the rate the board says it has
   */
  public Outcome rate(long[] ticks, TickRate nominal) {
    if (ticks.length < LEAST) {
      return new TooFew(ticks.length);
    }
    double period = nominal.ticksPerSecond() / hertz;
    double[] number = new double[ticks.length];
    double[] at = new double[ticks.length];
    for (int i = 1; i < ticks.length; i++) {
      // From edge to edge, so that a clock that is 0.5 % off never loses count.
      double step = (ticks[i] - ticks[i - 1]) / period;
      double whole = Math.rint(step);
      if (whole < 1 || Math.abs(step - whole) > GREATEST_MISS * Math.max(1, whole / 10)) {
        return new OtherFrequency();
      }
      number[i] = number[i - 1] + whole;
      at[i] = ticks[i] - ticks[0];
    }
    LineFit line = LineFit.of(number, at);
    double fast = 1e6 * (line.slope() / period - 1);
    double u = 1e6 * line.slopeSd() / period;
    double all = Math.hypot(u, standardUncertaintyPpm);
    // The reference is common to all edges; only the scatter of the edges has degrees of freedom.
    double degrees =
        u > 0 ? line.degreesOfFreedom() * Math.pow(all / u, 4) : Double.POSITIVE_INFINITY;
    return new Found(new ClockRate(fast, all, degrees, source));
  }
}
