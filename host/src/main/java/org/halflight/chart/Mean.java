package org.halflight.chart;

import java.util.Optional;

/**
 * A mean error with what is known of it.
 *
 * @param stops the mean
 * @param interval of the mean; empty when one firing alone gives none
 * @param byFirings the interval by the scatter of the firings alone, without what the rig may be
 *     off by: two runs on one rig are apart where these are
 */
public record Mean(double stops, Optional<Span> interval, Optional<Span> byFirings) {
  public Mean {
    if (!Double.isFinite(stops)) {
      throw new IllegalArgumentException("a mean is a finite number, not " + stops);
    }
  }

  /** A mean whose interval has nothing in it but the firings. */
  public Mean(double stops, Optional<Span> interval) {
    this(stops, interval, interval);
  }

  /** A mean with its interval. */
  public static Mean of(double stops, double lowStops, double highStops) {
    return new Mean(stops, Optional.of(new Span(lowStops, highStops)));
  }
}
