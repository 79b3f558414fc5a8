package org.halflight.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.time.TickRate;

/**
 * When the foil on the wind knob left its wire near a firing: the moment at which the advance
 * unlocked and the knob gave way.
 *
 * @param found what was seen
 * @param aheadSeconds from there to first light, below zero where the light came first; empty where
 *     no one move was seen, or no light
 */
public record KnobMove(Found found, OptionalDouble aheadSeconds) {
  /** What was seen of the foil. */
  public enum Found {
    /** It left the wire once. */
    LEFT,
    /** It did not leave the wire, or was never on it. */
    NOT_SEEN,
    /** It left the wire more than once: nobody knows which move was the advance. */
    MORE_THAN_ONCE
  }

  /** Edges nearer to each other than this are one move that chatters, in seconds. Our own limit. */
  static final double REST_SECONDS = 0.1;

  /** What the edges beside a firing tell. */
  public static KnobMove of(Firing firing, TickRate rate) {
    List<Long> moves = moves(firing.knob(), rate.ticks(REST_SECONDS));
    if (moves.isEmpty()) {
      return new KnobMove(Found.NOT_SEEN, OptionalDouble.empty());
    }
    if (moves.size() > 1) {
      return new KnobMove(Found.MORE_THAN_ONCE, OptionalDouble.empty());
    }
    OptionalLong light =
        firing.of(Channel.CENTRE_LOW).stream()
            .filter(Edge::high)
            .mapToLong(Edge::ticks)
            .findFirst();
    return new KnobMove(
        Found.LEFT,
        light.isPresent()
            ? OptionalDouble.of(rate.seconds(light.getAsLong() - moves.get(0)))
            : OptionalDouble.empty());
  }

  /** The beginnings of all moves away from the wire; edges between two rests are one move. */
  private static List<Long> moves(List<Edge> knob, long restTicks) {
    List<Long> moves = new ArrayList<>();
    long last = 0;
    for (int i = 0; i < knob.size(); i++) {
      Edge edge = knob.get(i);
      if (!edge.high() && (i == 0 || edge.ticks() - last >= restTicks)) {
        moves.add(edge.ticks());
      }
      last = edge.ticks();
    }
    return moves;
  }
}
