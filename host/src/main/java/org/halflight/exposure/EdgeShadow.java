package org.halflight.exposure;

/**
 * The shadow of a curtain's edge as a sensor behind a slit sees it: how far the edge is from the
 * middle of what the sensor covers, at each fraction of full light. A slit blurred by a round, even
 * lamp: the light is symmetric about one half, where the edge is in the middle.
 *
 * @param slitMillimetres what of the curtain the slit covers
 * @param blurMillimetres how wide the lamp's image on the curtain is; 0 for parallel light
 */
record EdgeShadow(double slitMillimetres, double blurMillimetres) {
  private static final int TURNS = 50;

  /** Less blur than this part of the slit is none. */
  private static final double LEAST_BLUR = 1e-3;

  static EdgeShadow of(CurtainGeometry geometry) {
    return new EdgeShadow(geometry.slitAtCurtainMillimetres(), geometry.lampAtCurtainMillimetres());
  }

  /** From first to full light. */
  double widthMillimetres() {
    return slitMillimetres + blurMillimetres;
  }

  /** Light when the edge is so far beyond the middle. */
  double light(double millimetres) {
    if (blurMillimetres < LEAST_BLUR * slitMillimetres) {
      return Math.min(1, Math.max(0, 0.5 + millimetres / slitMillimetres));
    }
    double half = slitMillimetres / 2;
    return (lampIntegral(millimetres + half) - lampIntegral(millimetres - half)) / slitMillimetres;
  }

  /** How far beyond the middle the edge is at a fraction of full light, 0 to 1. */
  double millimetresAt(double light) {
    double low = -widthMillimetres() / 2;
    double high = widthMillimetres() / 2;
    for (int i = 0; i < TURNS; i++) {
      double middle = (low + high) / 2;
      if (light(middle) < light) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** How wide it would be, if all of it rose as it does between two levels. */
  double widthBetween(LevelPair levels) {
    return (millimetresAt(levels.high()) - millimetresAt(levels.low()))
        / (levels.high() - levels.low());
  }

  /** The part of the lamp on one side of an edge across it, integrated up to the edge. */
  private double lampIntegral(double millimetres) {
    double radius = blurMillimetres / 2;
    double x = millimetres / radius;
    if (x <= -1) {
      return 0;
    }
    if (x >= 1) {
      return millimetres;
    }
    double root = Math.sqrt(1 - x * x);
    return radius * (x / 2 + (x * Math.asin(x) + root - root * root * root / 3) / Math.PI);
  }
}
