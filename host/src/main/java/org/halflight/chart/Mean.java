package org.halflight.chart;

import java.util.Objects;
import java.util.Optional;

/**
 * A mean error with what is known of it.
 *
 * @param stops the mean
 * @param interval of the mean; empty when one firing alone gives none
 */
public record Mean(double stops, Optional<Span> interval) {
  public Mean {
    Objects.requireNonNull(interval);
    if (!Double.isFinite(stops)) {
      throw new IllegalArgumentException("a mean is a finite number, not " + stops);
    }
  }

  /** A mean with its interval. */
  public static Mean of(double stops, double lowStops, double highStops) {
    return new Mean(stops, Optional.of(new Span(lowStops, highStops)));
  }
}
