package org.halflight.exposure;

/**
 * Where the edge of a curtain is at which time, by constant acceleration through three places.
 * Three points leave no residual: the curve is exact through them and nothing tests it. Between the
 * outer places it interpolates; beyond them it takes the acceleration to go on.
 */
public final class CurtainCurve {
  private static final double THOUSANDTH = 1e-3;

  private final double centreSeconds;
  private final double metresPerSecond;
  private final double metresPerSecondSquared;
  private final double outerMillimetres;
  private final double startSeconds;
  private final double endSeconds;

  /**
   * @param outerMillimetres from the centre to either outer place
   * @param startSeconds when it passed the outer place at the start
   * @param centreSeconds when it passed the centre
   * @param endSeconds when it passed the outer place at the end; in this order
   */
  public CurtainCurve(
      double outerMillimetres, double startSeconds, double centreSeconds, double endSeconds) {
    double before = centreSeconds - startSeconds;
    double after = endSeconds - centreSeconds;
    if (!(outerMillimetres > 0 && before > 0 && after > 0)) {
      throw new IllegalArgumentException("a curtain passes start, centre and end in this order");
    }
    this.outerMillimetres = outerMillimetres;
    this.startSeconds = startSeconds;
    this.centreSeconds = centreSeconds;
    this.endSeconds = endSeconds;
    double metres = outerMillimetres * THOUSANDTH;
    double firstHalf = metres / before;
    double lastHalf = metres / after;
    metresPerSecond = (firstHalf * after + lastHalf * before) / (before + after);
    metresPerSecondSquared = 2 * (lastHalf - firstHalf) / (before + after);
  }

  /**
   * When its edge passed a place. Where constant deceleration would stop it before the place, it is
   * taken to go on with the speed of the end, which is then the best guess left.
   *
   * @param millimetres from the centre, above 0 in the direction of travel
   */
  public double secondsAt(double millimetres) {
    double metres = millimetres * THOUSANDTH;
    double square = metresPerSecond * metresPerSecond + 2 * metresPerSecondSquared * metres;
    double least = leastMetresPerSecond();
    if (square < least * least) {
      double outer = Math.signum(millimetres) * outerMillimetres;
      double there = outer < 0 ? startSeconds : endSeconds;
      return there + (millimetres - outer) * THOUSANDTH / Math.max(least, metresPerSecondAt(outer));
    }
    // The root of the quadratic that is near the centre, in the form that a small acceleration
    // does not spoil.
    return centreSeconds + 2 * metres / (metresPerSecond + Math.sqrt(square));
  }

  /** How fast its edge passed a place, in metres per second. */
  public double metresPerSecondAt(double millimetres) {
    double square =
        metresPerSecond * metresPerSecond + 2 * metresPerSecondSquared * millimetres * THOUSANDTH;
    return Math.max(leastMetresPerSecond(), Math.sqrt(Math.max(0, square)));
  }

  /** A curtain that passed all three places was not slower than this share of its mean speed. */
  private double leastMetresPerSecond() {
    return 0.1 * 2 * outerMillimetres * THOUSANDTH / (endSeconds - startSeconds);
  }

  /** From one end to the other of a span about the centre, in seconds. */
  public double secondsOver(double spanMillimetres) {
    return secondsAt(spanMillimetres / 2) - secondsAt(-spanMillimetres / 2);
  }

  /** Mean speed from the outer place at the start to the centre. */
  public double firstHalfMetresPerSecond() {
    return outerMillimetres * THOUSANDTH / (centreSeconds - startSeconds);
  }

  /** Mean speed from the centre to the outer place at the end. */
  public double lastHalfMetresPerSecond() {
    return outerMillimetres * THOUSANDTH / (endSeconds - centreSeconds);
  }
}
