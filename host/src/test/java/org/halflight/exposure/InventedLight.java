package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;

/**
 * An invented opening of its own arithmetic: light from ramp functions, a lamp that is another one
 * at each firing and flutters within it, two comparators, and a converter of eight bits every 16 us
 * with windows and means. It shares no class with the model of the practice rig nor with the
 * method.
 */
final class InventedLight {
  static final double TICKS = 16e6;
  private static final int PERIOD = 256;
  private static final int BEFORE = 48;
  private static final int WINDOW = 256;
  private static final int AFTER = 48;
  private static final int MEANS = 128;

  private final DoubleUnaryOperator rise;
  private final DoubleUnaryOperator fall;
  private final double riseSeconds;
  private final double fallSeconds;
  private final double openSeconds;
  private final double top;

  /** Light that comes and goes by its own shape, 0 outside; for blades that stick. */
  private final DoubleUnaryOperator light;

  private final double lastSeconds;

  /**
   * @param rise light by the part of the opening time, from 0 at 0 to 1 at 1
   * @param fall the same of the closing, read backwards from the dark
   * @param openSeconds between the two ramps
   * @param top the light between them; the ramps are cut off there
   */
  InventedLight(
      DoubleUnaryOperator rise,
      double riseSeconds,
      double openSeconds,
      DoubleUnaryOperator fall,
      double fallSeconds,
      double top) {
    this.rise = rise;
    this.fall = fall;
    this.riseSeconds = riseSeconds;
    this.fallSeconds = fallSeconds;
    this.openSeconds = openSeconds;
    this.top = top;
    this.lastSeconds = riseSeconds + openSeconds + fallSeconds;
    this.light = this::ramps;
  }

  /** Any light, dark from a time on. */
  InventedLight(DoubleUnaryOperator light, double lastSeconds) {
    this.rise = x -> x;
    this.fall = x -> x;
    this.riseSeconds = 0;
    this.fallSeconds = 0;
    this.openSeconds = 0;
    this.top = 1;
    this.light = light;
    this.lastSeconds = lastSeconds;
  }

  private double ramps(double t) {
    double open =
        t < riseSeconds
            ? rise.applyAsDouble(t / riseSeconds)
            : t > riseSeconds + openSeconds
                ? fall.applyAsDouble((lastSeconds - t) / fallSeconds)
                : 1;
    return Math.min(top, open);
  }

  double at(double t) {
    return t <= 0 || t >= lastSeconds ? 0 : light.applyAsDouble(t);
  }

  /** The exact integral, by the middles of half a microsecond. */
  double effectiveSeconds() {
    long n = Math.min(2_000_000, Math.round(lastSeconds / 0.5e-6));
    double step = lastSeconds / n;
    double sum = 0;
    for (long i = 0; i < n; i++) {
      sum += at((i + 0.5) * step);
    }
    return sum * step;
  }

  /**
   * Rig and lamp of one firing.
   *
   * @param dark counts of ten bits
   * @param full counts
   * @param lamp its light at this firing, as a share of the light that was set
   * @param flutter standard deviation of a reading, as a share of the light
   * @param levelOffset by how much both comparators switch higher than they are held to
   */
  record Rig(double dark, double full, double lamp, double flutter, double levelOffset) {}

  static final long START = 16_000_000;

  /** What two comparators make of it. */
  Firing edges(LevelPair levels, Rig rig) {
    List<Edge> edges = new ArrayList<>();
    crossings(Channel.CENTRE_LOW, (levels.low() + rig.levelOffset) / rig.lamp, edges);
    crossings(Channel.CENTRE_HIGH, (levels.high() + rig.levelOffset) / rig.lamp, edges);
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  private void crossings(Channel channel, double level, List<Edge> edges) {
    // The plateau is left out, so that a second costs no more than a thousandth.
    double step = 4e-6;
    double t = 0;
    while (t < lastSeconds) {
      boolean still =
          riseSeconds > 0 && t > riseSeconds + step && t < riseSeconds + openSeconds - 2 * step;
      double next = Math.min(lastSeconds, still ? riseSeconds + openSeconds - step : t + step);
      if ((at(t) > level) != (at(next) > level)) {
        boolean up = at(next) > level;
        double left = t;
        double right = next;
        while (right - left > 1e-9) {
          double middle = (left + right) / 2;
          if ((at(middle) > level) == up) {
            right = middle;
          } else {
            left = middle;
          }
        }
        edges.add(new Edge(channel, up, START + Math.round(right * TICKS)));
      }
      t = next;
    }
  }

  /** What a converter makes of it: a window, means, a window. */
  SampledLight curve(Rig rig, Random random) {
    double trigger = 0.2;
    double first = 0;
    while (at(first) < trigger) {
      first += 1e-6;
    }
    double last = lastSeconds;
    while (at(last) < trigger) {
      last -= 1e-6;
    }
    long period = PERIOD;
    long from = START + Math.round(first * TICKS) - random.nextInt(PERIOD) - (BEFORE - 1L) * period;
    long end = START + Math.round(last * TICKS) + AFTER * period;
    long all = (end - from) / period;
    if (all <= WINDOW) {
      return new SampledLight(List.of(window(Kind.OPENING, from, (int) all, rig, random)), false);
    }
    Part opening = window(Kind.OPENING, from, WINDOW, rig, random);
    long plateau = from + WINDOW * period;
    long closes = Math.max(plateau, plateau + (all - WINDOW - (WINDOW - BEFORE)) * period);
    Part closing = window(Kind.CLOSING, closes, (int) ((end - closes) / period), rig, random);
    if (closes == plateau) {
      return new SampledLight(List.of(opening, closing), false);
    }
    long span = 1;
    while (span * MEANS < (closes - plateau) / period) {
      span *= 2;
    }
    List<Integer> means = new ArrayList<>();
    for (long at = plateau; at < closes; at += span * period) {
      double sum = 0;
      // As many looks as tell the mean; a span may hold thousands of readings.
      int looks = (int) Math.min(span, 64);
      for (int i = 0; i < looks; i++) {
        sum += at((at + (i + 0.5) * span * period / looks - START) / TICKS);
      }
      double noise = rig.flutter * random.nextGaussian() / Math.sqrt((double) span);
      double light = sum / looks * rig.lamp * (1 + noise);
      means.add((int) Math.round(16 * (rig.dark + (rig.full - rig.dark) * light)));
    }
    return new SampledLight(
        List.of(opening, new Part(Kind.PLATEAU, plateau, span * period, means, false), closing),
        false);
  }

  private Part window(Kind kind, long from, int n, Rig rig, Random random) {
    List<Integer> values = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double light =
          at((from + (long) i * PERIOD - START) / TICKS)
              * rig.lamp
              * (1 + rig.flutter * random.nextGaussian());
      double counts = rig.dark + (rig.full - rig.dark) * light + 0.3 * random.nextGaussian();
      values.add((int) Math.max(0, Math.min(255, Math.floor((counts + 0.5) / 4))));
    }
    return new Part(kind, from, PERIOD, values, false);
  }
}
