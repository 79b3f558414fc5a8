package org.halflight.rig;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.time.TickWidening;

/**
 * The time of a rig in whole ticks of its start: continues what the wire tells, places what has
 * only the low half, and knows which ticks cannot be. For one thread.
 */
final class WholeTicks {
  private static final long WIRE_TICKS = 1L << 48;

  /** Ticks of the wire lie at most so far before the whole ticks that place them. */
  private static final long LOW_HALF = 1L << 32;

  /**
   * How far the whole ticks that came last may lag behind those of a line: 67 s, of which a beat
   * needs 262 ms. What is left of the low half reaches 201 s back.
   */
  private static final long AHEAD_MOST_TICKS = 1L << 30;

  /** 19 hours: no beat is so late that no line is missing before it. */
  private static final long LEAP_MOST_TICKS = 1L << 40;

  /** Ticks beyond this are no time of a board, and would leave the range of numbers some day. */
  private static final long TICKS_MOST = 1L << 60;

  private final LifePace pace = new LifePace();
  private final TickWidening widening = new TickWidening(0);
  private final Map<Channel, Long> channelTicks = new EnumMap<>(Channel.class);
  private BoardTraits board = BoardTraits.USUAL;
  private Optional<Long> last = Optional.empty();
  private Optional<Long> beforeLast = Optional.empty();

  /** The latest ticks of edges and beats. */
  private Optional<Long> greatest = Optional.empty();

  /** The rig is of this kind. */
  void board(BoardTraits known) {
    board = known;
    pace.rate(known.rate());
  }

  /** Whether whole ticks of this start came. */
  boolean areKnown() {
    return last.isPresent();
  }

  /**
   * Whether whole ticks lie before those that came last, by more than lines come out of order; or,
   * where no line is missing between, so far behind them that they only seem to by the wrap of the
   * wire.
   */
  boolean goesBack(long wireTicks, boolean gap) {
    if (last.isEmpty()) {
      return false;
    }
    long way = wayFrom(last.get(), wireTicks);
    return Math.max(last.get(), greatest.orElse(last.get())) - (last.get() + way)
            > board.lateTicks()
        || (!gap && way > LEAP_MOST_TICKS);
  }

  /** Ticks of the wire, continued beyond its 48 bits. */
  long continued(long wireTicks) {
    return last.map(before -> before + wayFrom(before, wireTicks)).orElse(wireTicks);
  }

  /** Whether ticks can be the time of a board. */
  static boolean isTime(long ticks) {
    return ticks <= TICKS_MOST;
  }

  /** Takes whole ticks, which place what came before them. */
  void anchor(long ticks) {
    beforeLast = last;
    last = Optional.of(ticks);
    widening.anchor(ticks);
  }

  /** Everything of before these ticks is placed. */
  void reached(long ticks) {
    greatest = Optional.of(Math.max(ticks, greatest.orElse(ticks)));
  }

  /** A beat came at a time of the host. */
  void beat(long ticks, long hostNanos) {
    pace.beat(ticks, hostNanos);
  }

  /** Time has passed that nobody saw. */
  void forgetPace() {
    pace.forget();
  }

  /** Another start: its ticks mean nothing beside these. */
  void forget() {
    last = Optional.empty();
    beforeLast = Optional.empty();
    greatest = Optional.empty();
    channelTicks.clear();
    pace.forget();
  }

  /**
   * The whole ticks of an edge, empty when it cannot be.
   *
   * @param placing whether it came before the last whole ticks
   * @param hostNanos when it came, where that is known
   */
  OptionalLong ofEdge(Channel channel, int low32, boolean placing, OptionalLong hostNanos) {
    long ticks = widening.widen(low32);
    boolean impossible =
        ticks < 0
            || greatest.filter(latest -> ticks < latest - board.lateTicks()).isPresent()
            || ticks < channelTicks.getOrDefault(channel, ticks) - board.stampTicks()
            || (placing && ticks > last.orElse(ticks) + board.lateTicks())
            || (hostNanos.isPresent() && pace.isTooEarly(ticks, hostNanos.getAsLong()));
    if (impossible) {
      return OptionalLong.empty();
    }
    channelTicks.put(channel, ticks);
    reached(ticks);
    return OptionalLong.of(ticks);
  }

  /** Ticks that lie in the past, as those of a curve do, which may have taken minutes. */
  long past(int low32) {
    long ticks = widening.widen(low32);
    return ticks > last.orElse(ticks) + AHEAD_MOST_TICKS ? ticks - LOW_HALF : ticks;
  }

  /**
   * What came since then may be false when one of the last lines is; empty where nothing is sure.
   */
  OptionalLong sureUntil() {
    return beforeLast.isPresent()
        ? OptionalLong.of(beforeLast.get() - board.lateTicks())
        : OptionalLong.empty();
  }

  /**
   * The shorter way from whole ticks to ticks of the wire, over the wrap of the wire if need be.
   */
  private static long wayFrom(long ticks, long wireTicks) {
    long ahead = Math.floorMod(wireTicks - ticks, WIRE_TICKS);
    return ahead < WIRE_TICKS / 2 ? ahead : ahead - WIRE_TICKS;
  }
}
