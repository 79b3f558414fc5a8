package org.halflight.calibration;

import org.halflight.light.LightFlutter;
import org.halflight.profile.ComparatorTrips;

/**
 * From one sweep of a threshold through steady light, up and back down, to where its comparator
 * switches. The one estimate there is: the light setting and the calibration both use it.
 *
 * <p>A sweep is slow, so the comparator looks thousands of times at each step, and noise carries it
 * over before the threshold is there; so does the trough or the crest of a ripple. Uncorrected,
 * that makes every hysteresis come out too small. A shutter's flank is fast and leaves noise no
 * such time, so the trip points are moved back by what the noise of this light does on average, and
 * the doubt of that is in their uncertainty.
 */
public final class TripEstimate {
  /** Standard uncertainty of either way in light that does not move. */
  public static final double STANDARD_UNCERTAINTY_COUNTS = uncertainty(LightFlutter.NONE);

  /** The converter reads whole counts, evenly spread, and light without noise is one of them. */
  private static final double READING_UNCERTAINTY = 1 / Math.sqrt(12);

  /** Fine codes of the threshold are a quarter of a count; it is met somewhere within one. */
  private static final double STEP_COUNTS = 0.25;

  /** A read back threshold this far from its code says that the code is not the voltage. */
  private static final double CODE_HOLDS_COUNTS = 1.5;

  /**
   * How many standard deviations early noise switches it, by simulation: 2.3 for a front end whose
   * noise is new every 50 us, 3.6 where it is new each microsecond, at steps of 5 ms.
   */
  private static final double NOISE_REACH = 3;

  private static final double NOISE_REACH_BOUND = 0.75;

  /**
   * How many amplitudes of a ripple early it switches, by simulation of 50 to 120 Hz: not the whole
   * trough, since a step of the threshold takes about half a cycle.
   */
  private static final double RIPPLE_REACH = 0.7;

  private static final double RIPPLE_REACH_BOUND = 0.3;

  /** Two readings of steady light differ by less, besides its flutter. */
  private static final double LIGHT_HOLDS_COUNTS = 1;

  /** Noise below this does not show in whole counts. */
  private static final double UNSEEN_NOISE_COUNTS = 0.15;

  private TripEstimate() {}

  /**
   * One way of a sweep, at the moment of the switch.
   *
   * @param fineCode of the threshold, 4096 to the supply; -1 where it is not known
   * @param levelCounts the threshold, read back
   * @param lightCounts the light, read beside it
   */
  public record Way(int fineCode, double levelCounts, double lightCounts) {
    /** One of which only the reading is known. */
    public Way(double levelCounts, double lightCounts) {
      this(-1, levelCounts, lightCounts);
    }

    /**
     * The threshold by its code is surer than by a reading of whole counts, as long as both agree.
     * A reading is cut down, so it stands for half a count more, as that of the light does.
     *
     * @param passed from which side the code was reached: 1 on the way up
     */
    private double threshold(int passed) {
      double byCode = fineCode < 0 ? levelCounts : STEP_COUNTS * (fineCode - passed * 0.5) - 0.5;
      return Math.abs(levelCounts - byCode) <= CODE_HOLDS_COUNTS ? byCode : levelCounts;
    }
  }

  /**
   * A threshold that rises past the light is to the comparator what falling light is, and the other
   * way about. The light beside either switch is read at any place of a ripple, so both are held
   * against the mean of the two; where the light itself went elsewhere, each against its own.
   *
   * @param up the threshold on its way up
   * @param down the threshold on its way down
   * @param flutter of the light
   */
  public static ComparatorTrips of(Way up, Way down, LightFlutter flutter) {
    double early = NOISE_REACH * flutter.noiseCounts() + RIPPLE_REACH * flutter.rippleCounts();
    double mean = (up.lightCounts() + down.lightCounts()) / 2;
    boolean held =
        Math.abs(up.lightCounts() - down.lightCounts())
            <= 2 * flutter.rippleCounts() + flutter.noiseCounts() + LIGHT_HOLDS_COUNTS;
    return new ComparatorTrips(
        (held ? mean : down.lightCounts()) - down.threshold(-1) + early,
        (held ? mean : up.lightCounts()) - up.threshold(1) - early,
        uncertainty(flutter));
  }

  /** The same in light that does not move. */
  public static ComparatorTrips of(Way up, Way down) {
    return of(up, down, LightFlutter.NONE);
  }

  private static double uncertainty(LightFlutter flutter) {
    // Two readings at any place of a ripple, each 0.71 of its amplitude off.
    double ripple = flutter.rippleCounts() * Math.hypot(RIPPLE_REACH_BOUND / Math.sqrt(3), 0.5);
    double noise =
        NOISE_REACH_BOUND * Math.max(flutter.noiseCounts(), UNSEEN_NOISE_COUNTS) / Math.sqrt(3);
    return Math.sqrt(
        READING_UNCERTAINTY * READING_UNCERTAINTY
            + STEP_COUNTS * STEP_COUNTS / 12
            + ripple * ripple
            + noise * noise);
  }
}
