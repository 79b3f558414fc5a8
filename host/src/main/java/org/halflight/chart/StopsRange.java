package org.halflight.chart;

import java.util.function.DoubleConsumer;
import org.halflight.verdict.SpeedSummary;
import org.jfree.data.Range;

/** Gathers all that must be seen on an axis of stops, and leaves air around it. */
final class StopsRange implements DoubleConsumer {
  /** A shutter that is exactly right still shows this much, so that nothing small looks large. */
  private static final double LEAST_STOPS = 0.5;

  /** An interval up to this wide is held whole. */
  private static final double WIDEST_INTERVAL_STOPS = 5;

  /** Of a wider one so much either side of the mean, and of an unsure zone around its limit. */
  private static final double CUT_OFF_STOPS = 1;

  private static final double AIR = 0.06;

  private double low = -LEAST_STOPS;
  private double high = LEAST_STOPS;

  @Override
  public void accept(double stops) {
    low = Math.min(low, stops);
    high = Math.max(high, stops);
  }

  void accept(Limits limits) {
    accept(limits.lowStops() - Math.min(CUT_OFF_STOPS, limits.unsureBelowStops()));
    accept(limits.highStops() + Math.min(CUT_OFF_STOPS, limits.unsureAboveStops()));
  }

  /** The mean of a speed with its interval; nothing where there is none. */
  void acceptMean(SpeedSummary speed) {
    speed.meanStops().ifPresent(this);
    speed
        .expandedIntervalStops()
        .ifPresent(
            interval -> {
              double mean = speed.meanStops().orElseThrow();
              // The interval of two firings may be twenty stops wide; it is cut off at the edge
              // then, so that the firings themselves can be told apart.
              double room =
                  interval.high() - interval.low() > WIDEST_INTERVAL_STOPS
                      ? CUT_OFF_STOPS
                      : WIDEST_INTERVAL_STOPS;
              accept(Math.max(interval.low(), mean - room));
              accept(Math.min(interval.high(), mean + room));
            });
  }

  Range range() {
    double air = AIR * (high - low);
    return new Range(low - air, high + air);
  }
}
