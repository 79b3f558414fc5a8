package org.halflight.chart;

import java.util.Optional;

/**
 * What counts as right at a speed, and how far around each limit nobody can tell.
 *
 * @param span the limits, in stops
 * @param unsure the unsure zone of a limit, seen from it; the same around each. Empty when the
 *     uncertainty is not known
 */
public record Tolerance(Span span, Optional<Span> unsure) {
  public Tolerance {
    unsure.ifPresent(
        zone -> {
          if (!(zone.lowStops() < 0 && zone.highStops() > 0)) {
            throw new IllegalArgumentException("an unsure zone lies on both sides: " + zone);
          }
        });
  }

  /** Limits as far above as below, without an unsure zone. */
  public static Tolerance plusMinus(double stops) {
    return new Tolerance(new Span(-stops, stops), Optional.empty());
  }

  /** The same limits with an unsure zone of this half width around each. */
  public Tolerance withUnsure(double stops) {
    return withUnsure(stops, stops);
  }

  /**
   * The same limits with an unsure zone around each.
   *
   * @param belowStops how far below a limit it begins, above 0
   * @param aboveStops how far above a limit it ends, above 0
   */
  public Tolerance withUnsure(double belowStops, double aboveStops) {
    return new Tolerance(span, Optional.of(new Span(-belowStops, aboveStops)));
  }
}
