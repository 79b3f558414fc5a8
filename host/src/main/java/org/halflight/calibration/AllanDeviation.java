package org.halflight.calibration;

/**
 * How a clock wanders over a time of averaging, from its phase at equal steps (Allan 1966; NIST
 * Special Publication 1065 has the formulas). All in the unit of the phase over that of the step.
 *
 * @param plain Allan deviation of separate spans
 * @param overlapping of all spans, which scatters less
 * @param modified with the phase averaged over the span
 * @param time time deviation: modified times tau over the root of 3
 * @param hadamard of separate spans; a steady drift does not touch it
 */
public record AllanDeviation(
    double plain, double overlapping, double modified, double time, double hadamard) {
  /**
   * @param phase host time less board time at equal steps
   * @param stepSeconds between two of them
   * @param steps length of the spans in steps; {@code 3 steps} must be fewer than the phases
   */
  public static AllanDeviation of(double[] phase, double stepSeconds, int steps) {
    int n = phase.length;
    if (steps < 1 || n <= 3 * steps || !(stepSeconds > 0)) {
      throw new IllegalArgumentException(n + " phases are too few for spans of " + steps);
    }
    double tau = steps * stepSeconds;
    double modified = Math.sqrt(modifiedSquares(phase, steps) / 2) / tau;
    return new AllanDeviation(
        Math.sqrt(seconds(phase, steps, steps) / 2) / tau,
        Math.sqrt(seconds(phase, steps, 1) / 2) / tau,
        modified,
        tau * modified / Math.sqrt(3),
        Math.sqrt(thirds(phase, steps) / 6) / tau);
  }

  private static double seconds(double[] x, int m, int stride) {
    double sum = 0;
    int count = 0;
    for (int k = 0; k + 2 * m < x.length; k += stride) {
      double d = x[k + 2 * m] - 2 * x[k + m] + x[k];
      sum += d * d;
      count++;
    }
    return sum / count;
  }

  private static double thirds(double[] x, int m) {
    double sum = 0;
    int count = 0;
    for (int k = 0; k + 3 * m < x.length; k += m) {
      double d = x[k + 3 * m] - 3 * x[k + 2 * m] + 3 * x[k + m] - x[k];
      sum += d * d;
      count++;
    }
    return sum / count;
  }

  private static double modifiedSquares(double[] x, int m) {
    double sum = 0;
    int count = 0;
    for (int j = 0; j + 3 * m <= x.length; j++) {
      double inner = 0;
      for (int i = j; i < j + m; i++) {
        inner += x[i + 2 * m] - 2 * x[i + m] + x[i];
      }
      sum += inner * inner / ((double) m * m);
      count++;
    }
    return sum / count;
  }
}
