package org.halflight.calibration;

import org.halflight.profile.ComparatorTrips;

/**
 * From one sweep of a threshold through steady light, up and back down, to where its comparator
 * switches. The one estimate there is: the light setting and the calibration both use it.
 */
public final class TripEstimate {
  /**
   * Standard uncertainty of either way. The converter reads whole counts, evenly spread; light and
   * level are means of many.
   */
  public static final double STANDARD_UNCERTAINTY_COUNTS = 1 / Math.sqrt(12);

  private TripEstimate() {}

  /**
   * One way of a sweep, at the moment of the switch.
   *
   * @param levelCounts the threshold, read back
   * @param lightCounts the light, read beside it
   */
  public record Way(double levelCounts, double lightCounts) {
    /** A converter cuts both down to whole counts alike, which the difference does not feel. */
    double lightLessThreshold() {
      return lightCounts - levelCounts;
    }
  }

  /**
   * A threshold that rises past the light is to the comparator what falling light is, and the other
   * way about. Each way is held against the light that was read beside it: a lamp's ripple lets the
   * threshold meet the least light on its way up and the most on its way down.
   *
   * @param up the threshold on its way up
   * @param down the threshold on its way down
   */
  public static ComparatorTrips of(Way up, Way down) {
    return new ComparatorTrips(
        down.lightLessThreshold(), up.lightLessThreshold(), STANDARD_UNCERTAINTY_COUNTS);
  }
}
