package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.LightCurve;
import org.halflight.time.TickRate;

/** Light curves for tests, and the edges that a perfect rig would see of one. */
final class CurveEdges {
  /** Straight pieces of a bent ramp: the chords miss its area by less than 1e-6 of the ramp. */
  private static final int PIECES = 1000;

  private CurveEdges() {}

  /** The edges of the centre sensor, each crossing at the nearest tick. */
  static Firing firing(LightCurve curve, LevelPair levels) {
    List<Edge> edges = new ArrayList<>(edges(curve, Channel.CENTRE_LOW, levels.low()));
    edges.addAll(edges(curve, Channel.CENTRE_HIGH, levels.high()));
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  static List<Edge> edges(LightCurve curve, Channel channel, double level) {
    double[] seconds = curve.seconds();
    double[] open = curve.open();
    List<Edge> edges = new ArrayList<>();
    for (int i = 1; i < seconds.length; i++) {
      boolean before = open[i - 1] > level;
      boolean after = open[i] > level;
      if (before != after) {
        double part = (level - open[i - 1]) / (open[i] - open[i - 1]);
        double at = seconds[i - 1] + part * (seconds[i] - seconds[i - 1]);
        edges.add(new Edge(channel, after, TickRate.BOARD_16_MHZ.ticks(at)));
      }
    }
    return edges;
  }

  /**
   * Opens along a ramp, stays open, closes along the same ramp backwards.
   *
   * @param ramp light, 0 to 1, by the part of the opening time, 0 to 1
   * @param peak where the leaves turn round; 1 opens fully
   */
  static LightCurve curve(
      double riseSeconds,
      double openSeconds,
      double fallSeconds,
      DoubleUnaryOperator ramp,
      double peak) {
    double turn = 1;
    if (peak < 1) {
      double least = 0;
      for (int i = 0; i < 60; i++) {
        double middle = (least + turn) / 2;
        if (ramp.applyAsDouble(middle) < peak) {
          least = middle;
        } else {
          turn = middle;
        }
      }
    }
    double[] seconds = new double[2 * PIECES + 2];
    double[] open = new double[2 * PIECES + 2];
    for (int i = 0; i <= PIECES; i++) {
      double x = turn * ((double) i / PIECES);
      seconds[i] = riseSeconds * x;
      open[i] = ramp.applyAsDouble(x);
      int back = seconds.length - 1 - i;
      seconds[back] = riseSeconds * turn + openSeconds + fallSeconds * (turn - x);
      open[back] = open[i];
    }
    // One millisecond of dark before, so that ticks start above zero.
    return new LightCurve(seconds, open).shifted(1e-3);
  }

  static double areaLinear(double x) {
    return x;
  }

  static double radiusLinear(double x) {
    return x * x;
  }

  static double fastStart(double x) {
    return 1 - (1 - x) * (1 - x);
  }
}
