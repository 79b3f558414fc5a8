package org.halflight.chart;

import java.util.function.DoubleConsumer;
import org.jfree.data.Range;

/** Gathers all that must be seen on an axis of stops, and leaves air around it. */
final class StopsRange implements DoubleConsumer {
  /** A shutter that is exactly right still shows this much, so that nothing small looks large. */
  private static final double LEAST_STOPS = 0.5;

  /** An interval up to this wide is held whole. */
  private static final double WIDEST_INTERVAL_STOPS = 5;

  /** Of a wider one so much either side of the mean. */
  private static final double CUT_OFF_STOPS = 1;

  private static final double AIR = 0.06;

  private double low = -LEAST_STOPS;
  private double high = LEAST_STOPS;

  @Override
  public void accept(double stops) {
    low = Math.min(low, stops);
    high = Math.max(high, stops);
  }

  void accept(Tolerance tolerance) {
    Span unsure = tolerance.unsure().orElse(new Span(0, 0));
    accept(tolerance.span().lowStops() + unsure.lowStops());
    accept(tolerance.span().highStops() + unsure.highStops());
  }

  void accept(Mean mean) {
    accept(mean.stops());
    mean.interval()
        .ifPresent(
            span -> {
              // The interval of two firings may be twenty stops wide; it is cut off at the edge
              // then, so that the firings themselves can be told apart.
              double room =
                  span.highStops() - span.lowStops() > WIDEST_INTERVAL_STOPS
                      ? CUT_OFF_STOPS
                      : WIDEST_INTERVAL_STOPS;
              accept(Math.max(span.lowStops(), mean.stops() - room));
              accept(Math.min(span.highStops(), mean.stops() + room));
            });
  }

  Range range() {
    double air = AIR * (high - low);
    return new Range(low - air, high + air);
  }
}
