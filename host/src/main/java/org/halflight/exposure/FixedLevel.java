package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * Exposure with a rig whose one level cannot be set. That level stands where the light happens to
 * put it, and no rule holds for it; so its edges find a firing, and the light curve says when the
 * light crossed the levels {@link LevelPair#GAUSS}. From there on it is a firing like any other.
 *
 * <p>A lag of the front end moves the whole curve and leaves its integral.
 */
public final class FixedLevel {
  /**
   * An opening this long is timed by its edges where it has no curve, as one that is held for
   * minutes: the ramps are some milliseconds.
   */
  private static final double LONG_SECONDS = 1;

  private FixedLevel() {}

  /** Measures a firing whose curve is not there: one that has closed has no time before it is. */
  public static Exposure withoutCurve(
      Firing firing, LevelPair levels, TickRate rate, long nowTicks) {
    boolean isLong = AlternatingLevels.widthSeconds(firing, rate).orElse(0) >= LONG_SECONDS;
    return AlternatingLevels.measure(
        firing,
        Level.LOW,
        isLong ? OptionalDouble.of(0) : OptionalDouble.empty(),
        levels,
        rate,
        nowTicks);
  }

  /**
   * The edges of a firing as comparators at both levels would have seen it. Light that the curve
   * does not hold, a rebound or another opening, stays as the fixed level saw it.
   *
   * @param light that was set
   */
  public static Firing crossings(
      Firing firing, SampledLight curve, LightLevels light, TickRate rate) {
    if (!(CurveMethod.measure(curve, light, rate) instanceof Measured)) {
      return firing;
    }
    CurvePoints points = CurvePoints.of(curve, light, rate);
    List<Edge> edges = new ArrayList<>();
    for (Edge edge : firing.edges()) {
      boolean inCurve = edge.ticks() >= curve.firstTicks() && edge.ticks() <= curve.endTicks();
      if (edge.channel() != Channel.CENTRE_LOW || !inCurve) {
        edges.add(edge);
      }
    }
    add(edges, Channel.CENTRE_LOW, points, LevelPair.GAUSS.low(), curve.firstTicks(), rate);
    add(edges, Channel.CENTRE_HIGH, points, LevelPair.GAUSS.high(), curve.firstTicks(), rate);
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, firing.damage(), firing.knob());
  }

  private static void add(
      List<Edge> edges,
      Channel channel,
      CurvePoints points,
      double level,
      long firstTicks,
      TickRate rate) {
    for (int i = 0; i + 1 < points.size(); i++) {
      boolean bright = points.lightAt(i + 1) > level;
      if (points.lightAt(i) > level != bright) {
        edges.add(new Edge(channel, bright, firstTicks + rate.ticks(points.crossing(i, level))));
      }
    }
  }
}
