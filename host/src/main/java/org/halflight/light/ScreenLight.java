package org.halflight.light;

import java.util.List;

/**
 * Whether the light of a screen reaches the sensor, from readings with the screen white and black
 * in turn.
 *
 * @param share the light that white brings above black, as a share of the wanted light
 * @param uncertaintyShare its standard uncertainty, from how the pairs differ, likewise
 */
public record ScreenLight(double share, double uncertaintyShare) {
  /**
   * From here on the screen matters: so much of full light is an error of the level that still may
   * be, as with flicker ({@link FlickerJudge#MAINS_LIMIT_PERCENT}).
   */
  public static final double LIMIT_SHARE = FlickerJudge.MAINS_LIMIT_PERCENT / 100;

  /** Three standard uncertainties are hardly chance. Our own limit. */
  private static final double COVERAGE = 3;

  private static final int LEAST_PAIRS = 2;

  /** What it comes to. */
  public enum Finding {
    /** The screen's light reaches the sensor. */
    REACHES,
    /** It does not, or so little that it does no harm. */
    DOES_NOT,
    /** The light moved too much to tell. */
    UNCLEAR
  }

  /**
   * From pairs of readings, one after the other.
   *
   * @param white counts with a white screen
   * @param black counts with a black one just before or after, as many
   * @param wantedCounts full light less dark
   */
  public static ScreenLight of(List<Double> white, List<Double> black, double wantedCounts) {
    int n = white.size();
    if (n < LEAST_PAIRS || black.size() != n || !(wantedCounts > 0)) {
      throw new IllegalArgumentException("no check of a screen: " + white + ", " + black);
    }
    double mean = 0;
    for (int i = 0; i < n; i++) {
      mean += (white.get(i) - black.get(i)) / n;
    }
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double off = white.get(i) - black.get(i) - mean;
      squares += off * off;
    }
    double uncertainty = Math.sqrt(squares / (n - 1) / n);
    return new ScreenLight(mean / wantedCounts, uncertainty / wantedCounts);
  }

  /** What it comes to. */
  public Finding finding() {
    double reach = COVERAGE * uncertaintyShare;
    if (share >= Math.max(LIMIT_SHARE, reach)) {
      return Finding.REACHES;
    }
    return share + reach < 2 * LIMIT_SHARE ? Finding.DOES_NOT : Finding.UNCLEAR;
  }
}
