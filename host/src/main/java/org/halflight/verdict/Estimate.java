package org.halflight.verdict;

import java.util.Objects;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Sample;
import org.halflight.stats.Student;

/**
 * A value at one speed with what is known of it: a mean error or a shift, in stops.
 *
 * @param speed the marked speed
 * @param stops the value
 * @param standardError of the value, above zero
 * @param degreesOfFreedom of the standard error, above zero
 */
public record Estimate(
    MarkedSpeed speed, double stops, double standardError, double degreesOfFreedom) {
  public Estimate {
    Objects.requireNonNull(speed);
    if (!Double.isFinite(stops) || !(standardError > 0) || !(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException(
          stops + " stops, standard error " + standardError + " of " + degreesOfFreedom);
    }
  }

  static Estimate of(MarkedSpeed speed, MeanShift shift) {
    return new Estimate(speed, shift.shift(), shift.standardError(), shift.degreesOfFreedom());
  }

  /** The mean of a sample of two or more firings that are not all alike. */
  static Estimate ofMean(MarkedSpeed speed, Sample errors) {
    return new Estimate(
        speed, errors.mean().get(), errors.sd().get() / Math.sqrt(errors.n()), errors.n() - 1);
  }

  /** The chance of a value at least so far from another where that other is the true one. */
  double pAgainst(double other) {
    double t = (stops - other) / standardError;
    return 2 * Student.below(-Math.abs(t), degreesOfFreedom);
  }
}
