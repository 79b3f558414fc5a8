package org.halflight.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.wire.TrueFiring.TrueEdge;

/**
 * A board that sees true firings and says so, line by line, as docs/protocol.md tells it to: edges
 * before all else, beats of the true levels, counters behind the beat after edges. Each line leaves
 * when it is due and the one before is out, and reaches the host a little later.
 */
final class ModelBoard {
  /** What the real firmware takes from beat to beat when nothing hinders it. */
  static final long BEAT_TICKS = 120 * 32_768L;

  private static final long LINE_TICKS = 16_000;
  private static final long LATENCY_TICKS = 24_000;

  /**
   * A line as the host gets it.
   *
   * @param ticks the true time of what it tells
   * @param nanos host time of its arrival
   */
  record Sent(String line, long ticks, long nanos) {
    char kind() {
      return line.charAt(0);
    }
  }

  private final List<Sent> lines = new ArrayList<>();
  private int sequence;
  private int levels;
  private long edges;
  private long edgesTold;
  private long freeTicks;

  /**
   * @param phaseTicks when the first beat falls
   * @param untilTicks when nobody listens any more
   */
  static List<Sent> lines(List<TrueFiring> firings, long phaseTicks, long untilTicks) {
    ModelBoard board = new ModelBoard();
    board.say("H", "01 00F42400 full 7F R-0001 00000007 power 1.0.0 " + hex(12, 4800), 4800);
    List<TrueEdge> all = new ArrayList<>();
    firings.forEach(firing -> all.addAll(firing.edges()));
    int next = 0;
    for (long beat = phaseTicks; beat < untilTicks; beat += BEAT_TICKS) {
      while (next < all.size() && all.get(next).ticks() < beat) {
        board.edge(all.get(next++));
      }
      board.say("B", hex(12, beat) + " " + hex(2, board.levels) + " 0140", beat);
      if (board.edges != board.edgesTold) {
        board.edgesTold = board.edges;
        board.say("L", hex(8, board.edges) + " 0000 0000 0000 0000 0000 0000", beat);
      }
    }
    return List.copyOf(board.lines);
  }

  private void edge(TrueEdge edge) {
    levels = edge.high() ? levels | 1 << edge.channel() : levels & ~(1 << edge.channel());
    edges++;
    say(
        "E",
        edge.channel() + " " + (edge.high() ? 1 : 0) + " " + hex(8, edge.ticks() & 0xFFFFFFFFL),
        edge.ticks());
  }

  private void say(String kind, String fields, long ticks) {
    freeTicks = Math.max(freeTicks, ticks) + LINE_TICKS;
    String line = WireText.line(kind + " " + hex(4, sequence) + " " + fields);
    sequence = (sequence + 1) & 0xFFFF;
    lines.add(new Sent(line, ticks, (freeTicks + LATENCY_TICKS) * 125 / 2));
  }

  private static String hex(int digits, long value) {
    return String.format(Locale.ROOT, "%0" + digits + "X", value);
  }
}
