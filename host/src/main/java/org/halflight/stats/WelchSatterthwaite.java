package org.halflight.stats;

/**
 * Degrees of freedom of a combined standard uncertainty (Welch 1947, Satterthwaite 1946; JCGM
 * 100:2008 annex G.4): {@code u^4 / sum(u_i^4 / nu_i)}. For independent parts only.
 */
public final class WelchSatterthwaite {
  private WelchSatterthwaite() {}

  /**
   * @param parts standard uncertainties of the parts, each already in the unit of the whole
   * @param degrees degrees of freedom of each; infinite where it is not from readings
   * @return infinite when no part that counts has finite degrees
   */
  public static double degrees(double[] parts, double[] degrees) {
    if (parts.length != degrees.length || parts.length == 0) {
      throw new IllegalArgumentException(parts.length + " parts, " + degrees.length + " degrees");
    }
    double squares = 0;
    double fourths = 0;
    for (int i = 0; i < parts.length; i++) {
      if (!(parts[i] >= 0) || !(degrees[i] > 0)) {
        throw new IllegalArgumentException("part " + i + ": " + parts[i] + ", " + degrees[i]);
      }
      squares += parts[i] * parts[i];
      fourths += Math.pow(parts[i], 4) / degrees[i];
    }
    return fourths > 0 ? squares * squares / fourths : Double.POSITIVE_INFINITY;
  }
}
