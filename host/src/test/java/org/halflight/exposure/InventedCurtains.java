package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Two invented curtains with laws that can be written down, and three sensors whose light is worked
 * out by brute force. Places in millimetres, times in seconds.
 */
final class InventedCurtains {
  static final TickRate RATE = TickRate.BOARD_16_MHZ;
  static final CurtainGeometry PARALLEL =
      new CurtainGeometry(36, 16.2, 0.5, 5, Double.POSITIVE_INFINITY, 0);
  static final OuterSensors HALF = sensors(0.5, 0.5);

  private static final double STEP = 2e-6;
  private static final double RUN_UP = 8;

  private final DoubleUnaryOperator first;
  private final DoubleUnaryOperator second;
  private final CurtainGeometry geometry;
  private final double levelA;
  private final double levelB;
  private boolean bIsAtTheStart;
  private double lens;
  private Set<Channel> dead = Set.of();

  /**
   * @param first where the edge of the first curtain is at a time
   */
  InventedCurtains(
      DoubleUnaryOperator first,
      DoubleUnaryOperator second,
      CurtainGeometry geometry,
      double levelA,
      double levelB) {
    this.first = first;
    this.second = second;
    this.geometry = geometry;
    this.levelA = levelA;
    this.levelB = levelB;
  }

  static OuterSensors sensors(double levelA, double levelB) {
    return new OuterSensors(
        OptionalDouble.of(800),
        Optional.of(new SensorLevel(levelA, 800)),
        Optional.of(new SensorLevel(levelB, 800)),
        Set.of(Channel.OUTER_A, Channel.OUTER_B),
        Optional.of(Direction.A_TO_B));
  }

  /** From rest, with constant acceleration, over 36 mm in a time; released at another. */
  static DoubleUnaryOperator accelerating(double travelSeconds, double releaseSeconds) {
    double start = Math.sqrt(RUN_UP);
    double end = Math.sqrt(RUN_UP + 36);
    double root = (end - start) / travelSeconds;
    return seconds -> {
      double gone = Math.max(0, seconds - releaseSeconds) * root;
      return Math.min(24, gone * gone - RUN_UP - 18);
    };
  }

  InventedCurtains reversed() {
    bIsAtTheStart = true;
    return this;
  }

  /** A lens that is left on widens the shadows by this. */
  InventedCurtains withLens(double millimetres) {
    lens = millimetres;
    return this;
  }

  InventedCurtains withDead(Channel... sensors) {
    dead = Set.of(sensors);
    return this;
  }

  /** All edges of three sensors in order. */
  Firing firing() {
    List<Edge> edges = new ArrayList<>();
    double outer = geometry.placeMillimetres(Place.END);
    cross(edges, Channel.CENTRE_LOW, 0, LevelPair.GAUSS.low());
    cross(edges, Channel.CENTRE_HIGH, 0, LevelPair.GAUSS.high());
    cross(edges, Channel.OUTER_A, bIsAtTheStart ? outer : -outer, levelA);
    cross(edges, Channel.OUTER_B, bIsAtTheStart ? -outer : outer, levelB);
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  private void cross(List<Edge> edges, Channel channel, double place, double level) {
    if (dead.contains(channel)) {
      return;
    }
    boolean on = false;
    for (double at = 0; at < 0.2; at += STEP) {
      if (light(place, at) >= level != on) {
        on = !on;
        double low = at - STEP;
        double high = at;
        for (int i = 0; i < 20; i++) {
          double middle = (low + high) / 2;
          if (light(place, middle) >= level == on) {
            high = middle;
          } else {
            low = middle;
          }
        }
        edges.add(new Edge(channel, on, RATE.ticks(1 + high)));
      }
    }
  }

  /** The part of slit and blur that is uncovered and not covered yet. */
  private double light(double place, double seconds) {
    double from = second.applyAsDouble(seconds) - place;
    double to = first.applyAsDouble(seconds) - place;
    return to <= from ? 0 : Math.max(0, shadow(to) - shadow(from));
  }

  private double shadow(double beyond) {
    double slit = geometry.slitAtCurtainMillimetres();
    double blur = geometry.lampAtCurtainMillimetres() + lens;
    int strips = blur > 0 ? 40 : 1;
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < strips; i++) {
      double across = (2 * i + 1.0) / strips - 1;
      double weight = Math.sqrt(1 - across * across);
      double part = 0.5 + (beyond - across * blur / 2) / slit;
      sum += weight * Math.min(1, Math.max(0, part));
      weights += weight;
    }
    return sum / weights;
  }

  Exposure measured(OuterSensors sensors) {
    return new CurtainMethod(geometry, sensors, 1e-6).measure(firing(), LevelPair.GAUSS, RATE);
  }

  CurtainTravel travel(OuterSensors sensors) {
    return measured(sensors).curtains().orElseThrow();
  }
}
