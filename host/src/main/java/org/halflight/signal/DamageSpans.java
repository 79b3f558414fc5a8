package org.halflight.signal;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.Set;

/**
 * When something was lost, as far as that is known: from the last time that is sure before to the
 * first that is sure after. What lies nearer to such a span than the quiet time may lack an edge.
 * Spans that overlap are one, so that few are kept however much is lost. For one thread.
 */
final class DamageSpans {
  private static final long OPEN = Long.MAX_VALUE;

  private static final class Span {
    private long fromTicks;
    private long untilTicks;
    private boolean untilBeat;
    private final Set<Firing.Damage> kinds = EnumSet.noneOf(Firing.Damage.class);

    /** Lines are missing, and nobody knows yet whether edges were among them. */
    private boolean linesInDoubt;

    void add(Firing.Damage damage) {
      if (damage == Firing.Damage.LINES_LOST) {
        linesInDoubt = true;
      } else {
        kinds.add(damage);
      }
    }
  }

  private final Deque<Span> spans = new ArrayDeque<>();

  /**
   * Something was lost just now.
   *
   * @param fromTicks not before this time
   * @param untilBeat whether only a beat says for sure that it is over; else any edge does
   */
  void open(Firing.Damage damage, long fromTicks, boolean untilBeat) {
    Span span = last(fromTicks);
    span.fromTicks = Math.min(span.fromTicks, fromTicks);
    span.untilTicks = OPEN;
    span.untilBeat |= untilBeat;
    span.add(damage);
  }

  /** Something was lost between two times. */
  void add(Firing.Damage damage, long fromTicks, long untilTicks) {
    Span span = last(fromTicks);
    span.fromTicks = Math.min(span.fromTicks, fromTicks);
    span.untilTicks = Math.max(span.untilTicks, untilTicks);
    span.add(damage);
  }

  /** Of the lines that went missing so far it is known now whether edges were among them. */
  void edgesCounted(boolean allCame) {
    for (Span span : spans) {
      if (span.linesInDoubt && !allCame) {
        span.kinds.add(Firing.Damage.LINES_LOST);
      }
      span.linesInDoubt = false;
    }
    spans.removeIf(span -> span.kinds.isEmpty());
  }

  /**
   * Time has passed; what was lost before happened before {@code ticks}.
   *
   * @param beat whether a beat says so
   */
  void close(long ticks, boolean beat) {
    Span span = spans.peekLast();
    if (span != null && span.untilTicks == OPEN && (beat || !span.untilBeat)) {
      span.untilTicks = Math.max(span.fromTicks, ticks);
      span.untilBeat = false;
    }
  }

  /** Whether nothing is known to be lost. */
  boolean isEmpty() {
    return spans.isEmpty();
  }

  /** Adds what may have been lost between two times. */
  void addTouching(long fromTicks, long untilTicks, Set<Firing.Damage> to) {
    for (Span span : spans) {
      if (span.untilTicks >= fromTicks && span.fromTicks <= untilTicks) {
        to.addAll(span.kinds);
        if (span.linesInDoubt) {
          to.add(Firing.Damage.LINES_LOST);
        }
      }
    }
  }

  /** Lets go of what ended before a time; what of it touches a firing was asked for before. */
  void forgetBefore(long ticks) {
    while (!spans.isEmpty() && spans.peekFirst().untilTicks < ticks) {
      spans.removeFirst();
    }
  }

  void clear() {
    spans.clear();
  }

  /** The last span where one that begins at a time would overlap it, or a new one. */
  private Span last(long fromTicks) {
    Span last = spans.peekLast();
    if (last == null || last.untilTicks < fromTicks) {
      last = new Span();
      last.fromTicks = fromTicks;
      last.untilTicks = fromTicks;
      spans.addLast(last);
    }
    return last;
  }
}
