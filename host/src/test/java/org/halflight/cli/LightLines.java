package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.exposure.LevelPair;
import org.halflight.rig.LineCodec;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;

/**
 * A session file of invented light: trapezoids of exactly known area, as the lines of a rig whose
 * two comparators and converter see them.
 */
final class LightLines {
  private static final double RATE = 16e6;
  private static final double DARK = 20;
  private static final double FULL = 820;

  /** One reading of a window in 256 ticks. */
  private static final int PERIOD = 256;

  private static final int VALUES_A_LINE = 32;

  /** A trapezoid of light. */
  private record Piece(double begin, double ramp, double end, double peak) {
    double at(double seconds) {
      double inside = Math.min(seconds - begin, end - seconds);
      return inside <= 0 ? 0 : peak * Math.min(1, inside / ramp);
    }
  }

  private final StringBuilder text = new StringBuilder("halflight-session 1\n");
  private final List<Piece> pieces = new ArrayList<>();
  private double now = 1;
  private int sequence;
  private int curve;

  LightLines(String run) {
    rig(
        new RigMessage.Greeting(
            next(), 1, 16_000_000, "full", 0x7F, "R-0015", 1, "power", "1.0.0", 16_000_000));
    double span = FULL - DARK;
    mark(
        String.format(
            Locale.ROOT,
            "light dark=%f full=%f low=%f high=%f",
            DARK,
            FULL,
            DARK + span * LevelPair.GAUSS.low(),
            DARK + span * LevelPair.GAUSS.high()));
    mark("run camera=Invented phase=as-left dial=leaf reference=exact " + run);
  }

  /**
   * Light with straight ramps.
   *
   * @param area in seconds of full light
   * @param ramp how long each ramp takes, in seconds; half the base where it is a triangle
   * @param peak as a fraction of full light
   */
  LightLines light(double area, double ramp, double peak) {
    double end = now + area / peak + ramp;
    pieces.add(new Piece(now, ramp, end, peak));
    now = end;
    return this;
  }

  /** Dark for so long, in seconds. */
  LightLines dark(double seconds) {
    now += seconds;
    return this;
  }

  /** The firing is over: its edges, and the quiet behind them. */
  LightLines over() {
    for (Piece piece : pieces) {
      edge(piece, Channel.CENTRE_LOW, true, LevelPair.GAUSS.low());
      edge(piece, Channel.CENTRE_HIGH, true, LevelPair.GAUSS.high());
      edge(piece, Channel.CENTRE_HIGH, false, LevelPair.GAUSS.high());
      edge(piece, Channel.CENTRE_LOW, false, LevelPair.GAUSS.low());
    }
    pieces.clear();
    for (int i = 0; i < 4; i++) {
      now += 0.2;
      rig(new RigMessage.Beat(next(), ticks(now), 0, 16 * (int) DARK));
    }
    return this;
  }

  /** The same with a light curve that lasts so long after the first piece of light. */
  LightLines over(double windowSeconds) {
    List<Piece> seen = List.copyOf(pieces);
    double from = seen.get(0).begin() - 1e-3;
    int count = (int) ((seen.get(0).end() + windowSeconds - from) * RATE / PERIOD);
    over();
    long first = ticks(from);
    rig(
        new RigMessage.CurvePart(
            next(),
            curve,
            SampledLight.Kind.OPENING,
            (int) first,
            PERIOD,
            count,
            true,
            false,
            false));
    for (int at = 0; at < count; at += VALUES_A_LINE) {
      StringBuilder digits = new StringBuilder();
      for (int i = at; i < Math.min(count, at + VALUES_A_LINE); i++) {
        double seconds = (first + (long) i * PERIOD) / RATE;
        double light = seen.stream().mapToDouble(piece -> piece.at(seconds)).sum();
        digits.append(String.format(Locale.ROOT, "%02X", (int) (DARK + (FULL - DARK) * light) / 4));
      }
      rig(new RigMessage.CurveValues(next(), curve, at, digits.toString()));
    }
    curve++;
    now += 0.2;
    rig(new RigMessage.Beat(next(), ticks(now), 0, 16 * (int) DARK));
    return this;
  }

  Path write(Path file) throws IOException {
    mark("ends");
    return Files.writeString(file, text.toString());
  }

  private void edge(Piece piece, Channel channel, boolean rise, double level) {
    if (piece.peak() > level) {
      double into = piece.ramp() * level / piece.peak();
      long ticks = ticks(rise ? piece.begin() + into : piece.end() - into);
      text.append("R ").append(nanos(ticks / RATE)).append(' ');
      text.append(LineCodec.format(new RigMessage.EdgeSeen(next(), channel, rise, (int) ticks)))
          .append('\n');
    }
  }

  private void rig(RigMessage message) {
    text.append("R ").append(nanos(now)).append(' ');
    text.append(LineCodec.format(message)).append('\n');
  }

  private void mark(String words) {
    text.append("M ").append(nanos(now)).append(' ').append(words).append('\n');
  }

  private int next() {
    return sequence++ & 0xFFFF;
  }

  private static long ticks(double seconds) {
    return Math.round(seconds * RATE);
  }

  private static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }
}
