package org.halflight.rig.practice;

import java.util.ArrayDeque;
import org.halflight.shuttermodel.LightPaths;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** The light behind the practice shutter over virtual time, as far as it is known. */
final class LightTimeline {
  private record Piece(long startTicks, LightPaths paths) {
    long endTicks() {
      return startTicks + RATE.ticks(paths.endSeconds());
    }
  }

  private static final TickRate RATE = TickRate.BOARD_16_MHZ;

  private final ArrayDeque<Piece> pieces = new ArrayDeque<>();

  /** Adds light; from its start on it goes before those that started earlier. */
  void add(long startTicks, LightPaths paths) {
    ArrayDeque<Piece> later = new ArrayDeque<>();
    while (!pieces.isEmpty() && pieces.getLast().startTicks() > startTicks) {
      later.addFirst(pieces.removeLast());
    }
    pieces.add(new Piece(startTicks, paths));
    pieces.addAll(later);
  }

  /** The fraction of its full light at a sensor, at a time that was not forgotten. */
  double openAt(Channel channel, long ticks) {
    double open = 0;
    for (Piece piece : pieces) {
      if (piece.startTicks() > ticks) {
        break;
      }
      open = piece.paths().of(channel).at(RATE.seconds(ticks - piece.startTicks()));
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
