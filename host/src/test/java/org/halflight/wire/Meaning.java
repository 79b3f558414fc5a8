package org.halflight.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.halflight.wire.ModelBoard.Sent;

/**
 * Whether a rig can have meant lines of which none is missing, by what docs/protocol.md says of
 * ticks and levels and by when the lines came. Written from there, not from the program.
 */
final class Meaning {
  private static final long DISORDER = 320_000;
  private static final long SLACK = 16_000;
  private static final long BEAT = 1L << 22;

  /** A line cannot come so much before its time, in nanoseconds. */
  private static final double EARLY_NANOS = 52e6;

  private record Told(int channel, boolean high, long ticks) {}

  private record Beat(long ticks, int levels) {}

  private Meaning() {}

  static boolean isPossible(List<Sent> lines) {
    List<Told> edges = new ArrayList<>();
    List<Beat> beats = new ArrayList<>();
    long[] channels = new long[7];
    Arrays.fill(channels, Long.MIN_VALUE);
    long greatest = 0;
    long whole = 0;
    long latestSinceBeat = 0;
    double soonest = soonestNanos(lines);
    for (Sent sent : lines) {
      String[] fields = WireText.body(sent.line()).split(" ", -1);
      if (sent.kind() == 'B') {
        long ticks = Long.parseLong(fields[2], 16);
        if (ticks < greatest - DISORDER
            || latestSinceBeat > ticks + DISORDER
            || (!beats.isEmpty() && ticks > whole + BEAT)) {
          return false;
        }
        beats.add(new Beat(ticks, Integer.parseInt(fields[3], 16)));
        whole = ticks;
        greatest = Math.max(greatest, ticks);
      } else if (sent.kind() == 'E') {
        int channel = Integer.parseInt(fields[2], 16);
        long ticks = widened((int) Long.parseLong(fields[4], 16), whole);
        if (ticks < greatest - DISORDER
            || ticks < channels[channel]
            || sent.nanos() - ticks * 62.5 < soonest - EARLY_NANOS) {
          return false;
        }
        channels[channel] = ticks;
        greatest = Math.max(greatest, ticks);
        latestSinceBeat = Math.max(latestSinceBeat, ticks);
        edges.add(new Told(channel, fields[3].equals("1"), ticks));
      }
    }
    return levelsFit(edges, beats);
  }

  /** The altered line may be the soonest, so the second counts. */
  private static double soonestNanos(List<Sent> lines) {
    double[] delays =
        lines.stream()
            .filter(sent -> sent.kind() == 'B')
            .mapToDouble(sent -> sent.nanos() - sent.ticks() * 62.5)
            .sorted()
            .toArray();
    return delays[1];
  }

  private static long widened(int low32, long whole) {
    return whole + (low32 - (int) whole);
  }

  private static boolean levelsFit(List<Told> edges, List<Beat> beats) {
    for (Beat beat : beats) {
      for (int channel = 0; channel < 7; channel++) {
        boolean high = false;
        boolean near = false;
        for (Told edge : edges) {
          if (edge.channel() == channel) {
            high = edge.ticks() <= beat.ticks() ? edge.high() : high;
          }
          near |= Math.abs(edge.ticks() - beat.ticks()) <= SLACK;
        }
        if (!near && high != ((beat.levels() >> channel & 1) != 0)) {
          return false;
        }
      }
    }
    return true;
  }
}
