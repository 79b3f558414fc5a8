package org.halflight.uncertainty;

import org.halflight.stats.Student;

/**
 * An error that is the sum of an unknown bias up to a bound {@code b} and a part that scatters,
 * whose standard uncertainty {@code s} was estimated with some degrees of freedom.
 *
 * <p>The half width {@code x s} that holds it, wherever the bias lies, is the quantile of {@code |t
 * + b/s|}: with the bias at its bound the error stays below {@code x s} with the chance that
 * Student's {@code t} stays below {@code x - b/s}, and above {@code -x s} with that of {@code x +
 * b/s}. Taking the estimated {@code s} in {@code b/s} too errs to the safe side: over 200,000 draws
 * with 2, 4 and 9 degrees of freedom and {@code b} of 0 to 5 true {@code s} the interval of 95 %
 * held 95.0 to 95.7 % (docs/method.md).
 */
final class ShiftedStudent {
  private static final int STEPS = 60;

  private ShiftedStudent() {}

  /**
   * The chance that the scattering part leaves at the end that the bias is near to; the other end
   * has the level, plus 1, less this.
   *
   * @param level above 0.5, below 1
   * @param bias bound over standard uncertainty, above 0
   * @param degrees of freedom
   */
  static double nearChance(double level, double bias, double degrees) {
    double low = bias;
    double high = bias + 1;
    while (held(high, bias, degrees) < level) {
      high += high - bias;
    }
    for (int i = 0; i < STEPS && high - low > 1e-7 * high; i++) {
      double middle = (low + high) / 2;
      if (held(middle, bias, degrees) < level) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double near = Student.below(high - bias, degrees);
    return Math.min((1 + level) / 2, Math.max(level, near));
  }

  private static double held(double half, double bias, double degrees) {
    return Student.below(half - bias, degrees) - Student.below(-half - bias, degrees);
  }
}
