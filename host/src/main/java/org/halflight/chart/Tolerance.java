package org.halflight.chart;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * What counts as right at a speed, and how far around each limit nobody can tell.
 *
 * @param span the limits, in stops
 * @param unsureStops half the width of the unsure zone around each limit, above zero; empty when
 *     the uncertainty is not known
 */
public record Tolerance(Span span, OptionalDouble unsureStops) {
  public Tolerance {
    Objects.requireNonNull(span);
    unsureStops.ifPresent(
        unsure -> {
          if (!(unsure > 0) || !Double.isFinite(unsure)) {
            throw new IllegalArgumentException("an unsure zone is wider than zero: " + unsure);
          }
        });
  }

  /** Limits as far above as below, without an unsure zone. */
  public static Tolerance plusMinus(double stops) {
    return new Tolerance(new Span(-stops, stops), OptionalDouble.empty());
  }

  /** The same limits with an unsure zone of this half width around each. */
  public Tolerance withUnsure(double stops) {
    return new Tolerance(span, OptionalDouble.of(stops));
  }
}
