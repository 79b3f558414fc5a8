package org.halflight.light;

/**
 * A wave of known frequency in a stretch of numbers, some of which may be missing: least squares
 * for a level, a straight drift and the two parts of the wave. On a whole number of cycles with
 * nothing missing and no drift this is the single-bin discrete Fourier transform.
 *
 * @param amplitude of the wave, in the unit of the numbers
 * @param restVariance variance of what the fit leaves, by its degrees of freedom
 */
record WaveFit(double amplitude, double restVariance) {
  private static final int TERMS = 4;

  /**
   * Fits.
   *
   * @param times in seconds, not all close together against a cycle
   * @param values one for each time, at least 5
   */
  static WaveFit of(double[] times, double[] values, double hertz) {
    int count = times.length;
    if (count <= TERMS || values.length != count) {
      throw new IllegalArgumentException("too few values for a wave: " + count);
    }
    double[][] rows = new double[count][];
    double[][] normal = new double[TERMS][TERMS + 1];
    double half = (times[count - 1] - times[0]) / 2;
    for (int i = 0; i < count; i++) {
      double t = times[i] - times[0] - half;
      double angle = 2 * Math.PI * hertz * t;
      rows[i] = new double[] {1, t / half, Math.cos(angle), Math.sin(angle)};
      for (int r = 0; r < TERMS; r++) {
        for (int c = 0; c < TERMS; c++) {
          normal[r][c] += rows[i][r] * rows[i][c];
        }
        normal[r][TERMS] += rows[i][r] * values[i];
      }
    }
    double[] parts = solve(normal);
    double squares = 0;
    for (int i = 0; i < count; i++) {
      double rest = values[i];
      for (int c = 0; c < TERMS; c++) {
        rest -= parts[c] * rows[i][c];
      }
      squares += rest * rest;
    }
    return new WaveFit(Math.hypot(parts[2], parts[3]), squares / (count - TERMS));
  }

  /** Gaussian elimination with pivots; the last column is the right side. */
  private static double[] solve(double[][] a) {
    int n = a.length;
    for (int c = 0; c < n; c++) {
      int pivot = c;
      for (int r = c + 1; r < n; r++) {
        if (Math.abs(a[r][c]) > Math.abs(a[pivot][c])) {
          pivot = r;
        }
      }
      double[] swapped = a[c];
      a[c] = a[pivot];
      a[pivot] = swapped;
      for (int r = c + 1; r < n; r++) {
        double factor = a[r][c] / a[c][c];
        for (int k = c; k <= n; k++) {
          a[r][k] -= factor * a[c][k];
        }
      }
    }
    double[] x = new double[n];
    for (int r = n - 1; r >= 0; r--) {
      double sum = a[r][n];
      for (int k = r + 1; k < n; k++) {
        sum -= a[r][k] * x[k];
      }
      x[r] = sum / a[r][r];
    }
    return x;
  }
}
