package org.halflight.chart;

/**
 * From a lower to an upper error, in stops.
 *
 * @param lowStops lower end
 * @param highStops upper end, not below the lower
 */
public record Span(double lowStops, double highStops) {
  public Span {
    if (!Double.isFinite(lowStops) || !Double.isFinite(highStops) || lowStops > highStops) {
      throw new IllegalArgumentException("no span from " + lowStops + " to " + highStops);
    }
  }
}
