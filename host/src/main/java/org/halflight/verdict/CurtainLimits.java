package org.halflight.verdict;

import org.halflight.extratest.ContactShot;
import org.halflight.speeds.Stops;

/**
 * What curtains are judged by. All are common practice without a source, unless it says 'our
 * choice'; none is a standard's.
 */
public final class CurtainLimits {
  /** A travel may differ from the camera's own figure by this share. */
  public static final double TRAVEL_SHARE = 0.05;

  /** What the time at the centre may be off alike at all slit speeds, in seconds. */
  public static final double OFFSET_SECONDS = 0.1e-3;

  /** Bounce at the end, in stops of the exposure there; our choice. */
  public static final double BOUNCE_STOPS = 0.1;

  /** The same as a share of the exposure. */
  static final double BOUNCE_SHARE = Stops.ratio(BOUNCE_STOPS) - 1;

  /** From the closing of the flash contact to the second curtain, and so the least window. */
  public static final double FLASH_SECONDS = ContactShot.FLASH_SECONDS;

  /** More turns of a spring than as found, beyond which something else drags; our choice. */
  public static final double MOST_TURNS_MORE = 0.25;

  private static final double SLOPE_AT_250 = 1 / 6.0;
  private static final double SLOPE_AT_1000 = 1 / 3.0;

  private CurtainLimits() {}

  /**
   * How far the end may be brighter or darker than the start, in stops: a sixth up to 1/250, a
   * third from 1/1000 on, in between evenly over the speeds.
   */
  public static double slopeStops(double wantedSeconds) {
    double faster = Stops.between(1 / 250.0, wantedSeconds) / 2;
    double share = Math.min(1, Math.max(0, faster));
    return SLOPE_AT_250 + share * (SLOPE_AT_1000 - SLOPE_AT_250);
  }
}
