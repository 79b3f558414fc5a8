package org.halflight.calibration;

import org.halflight.signal.BoardTraits;

/**
 * What the comparators' own slowness adds behind a lagging square edge. A comparator has to gather
 * some overdrive before it switches, so it is the later the more slowly the light goes past: by
 * {@code sqrt(2 K / s)} on a slope {@code s}, where {@code K} is what it gathers, in millivolts
 * times microseconds. Behind a one-pole lag the slope at level {@code q} of a step of V millivolts
 * is {@code V (1 - q) / tau}, so the addition is {@code g / sqrt(1 - q)} with {@code g = sqrt(2 K
 * tau / V)}: over the levels that can be tried it looks nearly like more lag. Data hardly tell the
 * two apart, and a fit that knows only the lag reads some percent too much.
 *
 * <p>So g goes into the fit with what is known beforehand: evenly spread from 0 to that of {@link
 * #GATHER_MOST}.
 *
 * @param mean of g beforehand, in seconds
 * @param standardUncertainty of g beforehand
 */
record SlowFlank(double mean, double standardUncertainty) {
  /**
   * The most a common comparator gathers, in mV us. Data sheets give some 0.3 us at large overdrive
   * and 1 us to 3 us at 5 mV (from memory), which is 3.5 to 14 mV us.
   */
  static final double GATHER_MOST = 20;

  /**
   * @param lagSeconds a first estimate of the lag; below zero counts as none
   * @param spanCounts light of the LED less dark, in counts of the converter
   */
  static SlowFlank before(double lagSeconds, double spanCounts) {
    double micros = 1e6 * Math.max(0, lagSeconds);
    double most =
        1e-6
            * Math.sqrt(2 * GATHER_MOST * micros / (spanCounts * BoardTraits.MILLIVOLTS_PER_COUNT));
    return new SlowFlank(most / 2, most / Math.sqrt(12));
  }

  /** What g is multiplied with at a place {@code -ln(1 - q)} or {@code -ln q} of the lag. */
  static double factor(double place) {
    return Math.exp(place / 2);
  }
}
