package org.halflight.exposure;

/**
 * Where the edge of a curtain is at which time, by an accelerating curve through three places.
 * Three points leave no residual: the curve is exact through them and nothing tests it.
 *
 * <p>A spring pulls the curtain, and its pull less friction falls on the way: for a spring that
 * pulls evenly without friction not at all, for one that has nothing left at the end of the frame
 * to nothing. Both are accelerating curves, and differ by a few percent of the time outside the
 * sensors. The curve taken is in the middle: force on the way {@code x} from the centre as {@code 1
 * - slack x / frame}, with {@code slack = 1} and the sensors at 45 % of the frame. Where the second
 * half is not the faster one, nothing is known of the force, and it is taken to be even.
 */
public final class CurtainCurve {
  /** Force that stays the same. */
  static final double EVEN = 0;

  /** Between both. */
  static final double USUAL = 1;

  /** Force that has come to nothing at the end of the frame. */
  static final double SLACK = 2;

  private static final double THOUSANDTH = 1e-3;

  /** Steps of the integral over half the frame; even. */
  private static final int STEPS = 24;

  private static final int TURNS = 40;

  /** A curtain keeps this share of the square of its speed at the centre, at least. */
  private static final double LEAST_SQUARE = 0.02;

  private final double outerMillimetres;
  private final double centreSeconds;
  private final double beforeSeconds;
  private final double afterSeconds;
  private final double bend;
  private final double slope;
  private final double beforeIntegral;
  private final double afterIntegral;

  /**
   * @param outerMillimetres from the centre to either outer place
   * @param startSeconds when it passed the outer place at the start
   * @param centreSeconds when it passed the centre
   * @param endSeconds when it passed the outer place at the end; in this order
   */
  public CurtainCurve(
      double outerMillimetres, double startSeconds, double centreSeconds, double endSeconds) {
    this(outerMillimetres, startSeconds, centreSeconds, endSeconds, USUAL);
  }

  /**
   * @param slack see above, {@link #EVEN} to {@link #SLACK}
   */
  CurtainCurve(
      double outerMillimetres,
      double startSeconds,
      double centreSeconds,
      double endSeconds,
      double slack) {
    beforeSeconds = centreSeconds - startSeconds;
    afterSeconds = endSeconds - centreSeconds;
    if (!(outerMillimetres > 0 && beforeSeconds > 0 && afterSeconds > 0)) {
      throw new IllegalArgumentException("a curtain passes start, centre and end in this order");
    }
    this.outerMillimetres = outerMillimetres;
    this.centreSeconds = centreSeconds;
    boolean isFaster = afterSeconds < beforeSeconds;
    bend = isFaster ? slack * CurtainGeometry.USUAL_OUTER_SHARE / 2 : 0;
    double low = isFaster ? 0 : -1;
    double high = isFaster ? 1 : 0;
    for (int i = 0; i < TURNS; i++) {
      double middle = (low + high) / 2;
      if (integral(-1, middle) * afterSeconds < -beforeSeconds * integral(1, middle)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    slope = (low + high) / 2;
    beforeIntegral = -integral(-1, slope);
    afterIntegral = integral(1, slope);
  }

  /**
   * When its edge passed a place.
   *
   * @param millimetres from the centre, above 0 in the direction of travel
   */
  public double secondsAt(double millimetres) {
    double way = millimetres / outerMillimetres;
    return centreSeconds + unitSeconds(way) * integral(way, slope);
  }

  /** By how much the two extremes of force leave the time to a place open, plus or minus. */
  double boundSeconds(double millimetres) {
    return Math.abs(pulled(EVEN).secondsAt(millimetres) - pulled(SLACK).secondsAt(millimetres)) / 2;
  }

  private CurtainCurve pulled(double slack) {
    return new CurtainCurve(
        outerMillimetres,
        centreSeconds - beforeSeconds,
        centreSeconds,
        centreSeconds + afterSeconds,
        slack);
  }

  /** How fast its edge passed a place, in metres per second. */
  public double metresPerSecondAt(double millimetres) {
    double way = millimetres / outerMillimetres;
    return outerMillimetres * THOUSANDTH / unitSeconds(way) * Math.sqrt(square(way, slope));
  }

  /** From one end to the other of a span about the centre, in seconds. */
  public double secondsOver(double spanMillimetres) {
    return secondsAt(spanMillimetres / 2) - secondsAt(-spanMillimetres / 2);
  }

  /** Mean speed from the outer place at the start to the centre. */
  public double firstHalfMetresPerSecond() {
    return outerMillimetres * THOUSANDTH / beforeSeconds;
  }

  /** Mean speed from the centre to the outer place at the end. */
  public double lastHalfMetresPerSecond() {
    return outerMillimetres * THOUSANDTH / afterSeconds;
  }

  /**
   * Seconds over the integral: the same on both sides, but for a curtain that stuck at the start.
   */
  private double unitSeconds(double way) {
    return way < 0 ? beforeSeconds / beforeIntegral : afterSeconds / afterIntegral;
  }

  /** The square of the speed over that at the centre; the way in units of that to a sensor. */
  private double square(double way, double rise) {
    return Math.max(LEAST_SQUARE, 1 + rise * (way - bend * way * way));
  }

  /** The time to a place, in units of the way to a sensor and the speed at the centre (Simpson). */
  private double integral(double way, double rise) {
    double sum = 0;
    for (int i = 0; i <= STEPS; i++) {
      double weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
      sum += weight / Math.sqrt(square(way * i / STEPS, rise));
    }
    return sum * way / (3 * STEPS);
  }
}
