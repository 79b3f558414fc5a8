package org.halflight.speeds;

/**
 * How far a shutter may be off, the user's choice.
 *
 * <p>The usual one, a third of a stop and half a stop at the top speed, is trade custom: no
 * standard's limit.
 *
 * @param slowStops greatest error on the slow side (too much exposure), above 0
 * @param fastStops greatest error on the fast side, above 0, as a size
 */
public record Tolerance(double slowStops, double fastStops) {
  /** A third of a stop either way. Trade custom. */
  public static final Tolerance THIRD = new Tolerance(1 / 3.0, 1 / 3.0);

  /** Half a stop either way. Trade custom, at the top speed. */
  public static final Tolerance HALF = new Tolerance(0.5, 0.5);

  public Tolerance {
    if (!(slowStops > 0 && slowStops < 100 && fastStops > 0 && fastStops < 100)) {
      throw new IllegalArgumentException(
          "tolerances are above 0 stops: " + slowStops + " slow, " + fastStops + " fast");
    }
  }

  /** The usual tolerance of a marked speed on its dial. Trade custom. */
  public static Tolerance usual(Dial dial, MarkedSpeed speed) {
    return speed.equals(dial.top()) && dial.speeds().size() > 1 ? HALF : THIRD;
  }

  /**
   * A tolerance in percent of the time, plus or minus: unlike on both sides in stops, {@code log2(1
   * + p / 100)} slow and {@code -log2(1 - p / 100)} fast.
   *
   * @param percent above 0 and below 100
   */
  public static Tolerance ofPercent(double percent) {
    if (!(percent > 0 && percent < 100)) {
      throw new IllegalArgumentException("a tolerance is above 0 and below 100 %: " + percent);
    }
    return new Tolerance(Stops.between(1 + percent / 100, 1), -Stops.between(1 - percent / 100, 1));
  }

  /** The slow limit in percent of the time, above 0. */
  public double slowPercent() {
    return 100 * (Stops.ratio(slowStops) - 1);
  }

  /** The fast limit in percent of the time, above 0, as a size. */
  public double fastPercent() {
    return 100 * (1 - Stops.ratio(-fastStops));
  }

  /** Whether an error lies on or between the limits. */
  public boolean contains(double errorStops) {
    return errorStops <= slowStops && errorStops >= -fastStops;
  }
}
