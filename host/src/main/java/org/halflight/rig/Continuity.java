package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.Deque;

/** Follows the line counter of a rig. For one thread. */
final class Continuity {
  /** What a line's counter says against those before it. */
  enum Step {
    /** The first line, or the one that was due. */
    DUE,
    /** A line that was here before. */
    REPEATED,
    /** Lines are missing before this one. */
    GAP,
    /**
     * The counter went back (or half its range ahead): the rig started anew, or very many lines are
     * missing.
     */
    BACK
  }

  private static final int MODULUS = 0x10000;

  /** How far back a line that comes twice is still known. */
  private static final int RECENT_LINES = 16;

  private record Seen(int sequence, ParsedLine line) {}

  private final Deque<Seen> recent = new ArrayDeque<>();
  private int lastSequence = -1;

  /** How many of the last lines came since the counter went back. */
  private int sinceBack;

  private int missing;

  boolean hasBegun() {
    return lastSequence >= 0;
  }

  /** Takes the next line of a rig. */
  Step step(int sequence, ParsedLine line) {
    missing = 0;
    Seen seen = new Seen(sequence, line);
    if (isRepeat(seen)) {
      return Step.REPEATED;
    }
    Step step = Step.DUE;
    if (hasBegun()) {
      int ahead = Math.floorMod(sequence - lastSequence - 1, MODULUS);
      if (ahead >= MODULUS / 2) {
        step = Step.BACK;
        sinceBack = 0;
        // The rig counts from 0 after a start: at least the lines since then did not come.
        missing = Math.max(1, sequence);
      } else if (ahead > 0) {
        step = Step.GAP;
        missing = ahead;
      }
    }
    if (greetsAnew(seen)) {
      recent.clear();
    } else if (recent.size() == RECENT_LINES) {
      recent.removeFirst();
    }
    recent.addLast(seen);
    sinceBack = Math.min(sinceBack + 1, RECENT_LINES);
    lastSequence = sequence;
    return step;
  }

  /** Lines up to this one came that are not shown here. */
  void leftOut(int last) {
    if (hasBegun()) {
      lastSequence = last;
      sinceBack = RECENT_LINES;
    }
  }

  /** How many lines are missing before the last one that was taken; at least so many if BACK. */
  int missing() {
    return missing;
  }

  /**
   * The rig started anew where the counter went back, and the greeting of that start did not come,
   * or only a later one did: it may say word for word what it said at the start before.
   */
  void startedAnew() {
    while (recent.size() > sinceBack) {
      recent.removeFirst();
    }
  }

  private boolean isRepeat(Seen seen) {
    // A board that starts twice may greet twice in the same words; without lines between, nothing
    // hangs on which it was.
    return greetsAnew(seen) ? seen.equals(recent.peekLast()) : recent.contains(seen);
  }

  private static boolean greetsAnew(Seen seen) {
    return seen.sequence() == 0
        && seen.line() instanceof ParsedLine.Message found
        && found.message() instanceof RigMessage.Greeting;
  }
}
