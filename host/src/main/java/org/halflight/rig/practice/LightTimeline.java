package org.halflight.rig.practice;

import java.util.ArrayDeque;
import org.halflight.shuttermodel.LightPath;
import org.halflight.time.TickRate;

/** The light behind the practice shutter over virtual time, as far as it is known. */
final class LightTimeline {
  private record Piece(long startTicks, LightPath path) {
    long endTicks() {
      return startTicks + RATE.ticks(path.endSeconds());
    }
  }

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final ArrayDeque<Piece> pieces = new ArrayDeque<>();

  /** Adds a path; from its start on it goes before those that started earlier. */
  void add(long startTicks, LightPath path) {
    ArrayDeque<Piece> later = new ArrayDeque<>();
    while (!pieces.isEmpty() && pieces.getLast().startTicks() > startTicks) {
      later.addFirst(pieces.removeLast());
    }
    pieces.add(new Piece(startTicks, path));
    pieces.addAll(later);
  }

  /** The fraction of full light at a time that was not forgotten. */
  double openAt(long ticks) {
    double open = 0;
    for (Piece piece : pieces) {
      if (piece.startTicks() > ticks) {
        break;
      }
      open = piece.path().at(RATE.seconds(ticks - piece.startTicks()));
    }
    return open;
  }

  /** Forgets what nobody will ask for who asks for no time before this. */
  void forgetBefore(long ticks) {
    while (pieces.size() > 1 && pieces.peek().endTicks() < ticks && secondStarted(ticks)) {
      pieces.remove();
    }
  }

  private boolean secondStarted(long ticks) {
    return pieces.stream().skip(1).findFirst().orElseThrow().startTicks() < ticks;
  }
}
