package org.halflight.stats;

/**
 * In how many orders a given number of pairs stands the wrong way round; the null distributions of
 * the rank methods. Counts are kept as doubles: nothing is ever subtracted, so they stay right to
 * about 1e-14 beyond the whole numbers that a double can hold.
 */
final class InversionCounts {
  private InversionCounts() {}

  /**
   * Two samples without ties: element {@code u} is the number of ways to mix {@code m} and {@code
   * n} firings in which {@code u} pairs have the second above the first (Mann and Whitney 1947).
   */
  static double[] ofTwoSamples(int m, int n) {
    // Row by row of the recurrence f(i, j, u) = f(i - 1, j, u - j) + f(i, j - 1, u).
    double[][] row = new double[n + 1][];
    for (int j = 0; j <= n; j++) {
      row[j] = new double[] {1};
    }
    for (int i = 1; i <= m; i++) {
      double[][] next = new double[n + 1][];
      next[0] = new double[] {1};
      for (int j = 1; j <= n; j++) {
        double[] counts = new double[i * j + 1];
        for (int u = 0; u < row[j].length; u++) {
          counts[u + j] += row[j][u];
        }
        for (int u = 0; u < next[j - 1].length; u++) {
          counts[u] += next[j - 1][u];
        }
        next[j] = counts;
      }
      row = next;
    }
    return row[n];
  }

  /**
   * All distinct orders of values with ties: element {@code k} is the number of orders with {@code
   * k} pairs the wrong way round (MacMahon's multinomial generating function).
   *
   * @param groups how often each value occurs
   */
  static double[] ofOrders(int... groups) {
    double[] counts = {1};
    int placed = 0;
    for (int group : groups) {
      counts = product(counts, ofTwoSamples(placed, group));
      placed += group;
    }
    return counts;
  }

  private static double[] product(double[] a, double[] b) {
    double[] product = new double[a.length + b.length - 1];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        product[i + j] += a[i] * b[j];
      }
    }
    return product;
  }
}
