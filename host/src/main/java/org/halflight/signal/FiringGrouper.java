package org.halflight.signal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Sorts edges into firings by quiet time: a firing is over when no edge has come for the quiet time
 * and every light channel is dark. The number of edges plays no part, so bounce stays with its
 * firing, and a T exposure may last an hour.
 *
 * <p>Edges of different channels may come out of order by up to the late time; they are put in
 * order of ticks, and edges of equal ticks stay in the order in which they came. A firing is
 * therefore handed over when the late time has passed on top of the quiet time.
 *
 * <p>Contact, click and release may stay high without holding a firing open, and a contact that
 * chatters for ever or a click sensor that hears a machine holds it open for {@link
 * #QUIETS_AFTER_LIGHT} quiet times after the light, or until the release is pressed again, and for
 * {@link #QUIETS_WITHOUT_LIGHT} where no light comes. What follows is a firing of its own.
 *
 * <p>All ticks are widened to 64 bits. Not safe for use by several threads. No clock is read: time
 * passes only by edges and by {@link #advance}.
 */
public final class FiringGrouper {
  /** How far out of order edges may come on the wire: 20 ms of a 16 MHz board, in ticks. */
  public static final long LATE_TICKS = 320_000;

  /**
   * After so many quiet times in the dark the edges of other channels no longer belong to the light
   * before them. Blades and bounce are done in a tenth of it; our choice.
   */
  public static final int QUIETS_AFTER_LIGHT = 10;

  /**
   * Edges without light are let go after so many quiet times. With 0.2 s that is 30 s, which is
   * longer than a self-timer whirrs; our choice.
   */
  public static final int QUIETS_WITHOUT_LIGHT = 150;

  /**
   * Levels and ticks of a beat are not read in one instant, so an edge this near to a beat settles
   * nothing: 1 ms of a 16 MHz board, in ticks.
   */
  private static final long BEAT_SLACK_TICKS = 16_000;

  private record BeatLevels(long ticks, int levels) {}

  private final long quietTicks;
  private final long lateTicks;

  private final List<Edge> settled = new ArrayList<>();
  private OptionalLong settledLightTicks = OptionalLong.empty();
  private final Set<Firing.Damage> settledDamage = EnumSet.noneOf(Firing.Damage.class);
  private final List<Edge> pending = new ArrayList<>();
  private final Set<Firing.Damage> pendingDamage = EnumSet.noneOf(Firing.Damage.class);
  private long pendingDamageUntilTicks;
  private final Deque<BeatLevels> beats = new ArrayDeque<>();
  private final Map<Channel, Boolean> levels = new EnumMap<>(Channel.class);
  private final Map<Channel, Long> changedTicks = new EnumMap<>(Channel.class);
  private long latestTicks = Long.MIN_VALUE;
  private long damageBetweenFirings;

  /**
   * For edges that come at most {@link #LATE_TICKS} out of order.
   *
   * @param quietTicks the quiet time, above zero
   */
  public FiringGrouper(long quietTicks) {
    this(quietTicks, LATE_TICKS);
  }

  /**
   * @param quietTicks the quiet time, above zero
   * @param lateTicks how far out of order edges may come, 0 or more
   */
  public FiringGrouper(long quietTicks, long lateTicks) {
    if (quietTicks <= 0 || lateTicks < 0) {
      throw new IllegalArgumentException(
          "quiet time must be above zero and late time not below: "
              + quietTicks
              + ", "
              + lateTicks);
    }
    this.quietTicks = quietTicks;
    this.lateTicks = lateTicks;
  }

  /**
   * Takes an edge.
   *
   * @return the firings that are over by now, in order; mostly none
   */
  public List<Firing> add(Edge edge) {
    Objects.requireNonNull(edge);
    int at = pending.size();
    while (at > 0 && pending.get(at - 1).ticks() > edge.ticks()) {
      at--;
    }
    pending.add(at, edge);
    return passTo(edge.ticks());
  }

  /**
   * Lets time pass: nothing more will come from before {@code nowTicks} less the late time.
   *
   * @return the firings that are over by now, in order
   */
  public List<Firing> advance(long nowTicks) {
    return passTo(nowTicks);
  }

  /**
   * Lets time pass to a beat and holds its levels against the edges. A channel whose level is not
   * what its edges say has lost an edge: the firing under way is a contradiction, and the level of
   * the beat is believed from here on, so that a lost closing does not hold a firing open for ever.
   *
   * @param nowTicks ticks of the beat
   * @param levelMask bit n is the level of the channel with code n
   * @return the firings that are over by now, in order
   */
  public List<Firing> beat(long nowTicks, int levelMask) {
    beats.add(new BeatLevels(nowTicks, levelMask));
    return passTo(nowTicks);
  }

  /**
   * Takes note that something was lost. It belongs to the firing under way, which lasts until its
   * quiet time has passed; with none under way it is only counted.
   */
  public void damage(Firing.Damage damage) {
    Objects.requireNonNull(damage);
    if (settled.isEmpty() && pending.isEmpty()) {
      damageBetweenFirings++;
      return;
    }
    if (!settled.isEmpty()) {
      settledDamage.add(damage);
    }
    if (!pending.isEmpty()) {
      pendingDamage.add(damage);
      pendingDamageUntilTicks = pending.get(pending.size() - 1).ticks();
    }
  }

  /** How much damage fell into no firing. */
  public long damageBetweenFirings() {
    return damageBetweenFirings;
  }

  /** The firing under way as far as it is known, for a provisional figure. */
  public Optional<Firing> underway() {
    if (settled.isEmpty() && pending.isEmpty()) {
      return Optional.empty();
    }
    List<Edge> edges = new ArrayList<>(settled);
    Set<Firing.Damage> damage = EnumSet.noneOf(Firing.Damage.class);
    damage.addAll(settledDamage);
    Map<Channel, Boolean> after = new EnumMap<>(Channel.class);
    after.putAll(levels);
    OptionalLong light = settledLightTicks;
    for (Edge edge : pending) {
      if (!edges.isEmpty()
          && (isQuietBefore(edge, edges.get(edges.size() - 1), after)
              || isLingering(edge, edges, light, after))) {
        break;
      }
      edges.add(edge);
      light = edge.channel().isLight() ? OptionalLong.of(edge.ticks()) : light;
      if (edge.ticks() <= pendingDamageUntilTicks) {
        damage.addAll(pendingDamage);
      }
      if (Boolean.valueOf(edge.high()).equals(after.put(edge.channel(), edge.high()))) {
        damage.add(Firing.Damage.CONTRADICTION);
      }
    }
    return Optional.of(new Firing(edges, List.copyOf(damage)));
  }

  /** Whether a light channel is high by the edges and beats so far. */
  public boolean isLight() {
    Map<Channel, Boolean> after = new EnumMap<>(Channel.class);
    after.putAll(levels);
    pending.forEach(edge -> after.put(edge.channel(), edge.high()));
    return isLight(after);
  }

  /**
   * Ends here, in the middle or not: the link went, or the rig started anew. Levels and time are
   * forgotten, so that ticks may start from zero again.
   *
   * @param damage what ended it; goes to the last firing when it was still under way
   * @return the firings that were not handed over yet, in order
   */
  public List<Firing> finish(Firing.Damage damage) {
    damage(damage);
    return finish();
  }

  /** Ends here because a record ends, with nothing known to be lost. */
  public List<Firing> finish() {
    List<Firing> over = new ArrayList<>();
    settleUpTo(Long.MAX_VALUE, over);
    emit(over);
    beats.clear();
    levels.clear();
    changedTicks.clear();
    latestTicks = Long.MIN_VALUE;
    return over;
  }

  private List<Firing> passTo(long ticks) {
    latestTicks = Math.max(latestTicks, ticks);
    List<Firing> over = new ArrayList<>();
    settleUpTo(latestTicks - lateTicks, over);
    return over;
  }

  /** Moves everything up to the horizon, edges and levels of beats in order of ticks. */
  private void settleUpTo(long horizonTicks, List<Firing> over) {
    int settledCount = 0;
    while (settledCount < pending.size() && pending.get(settledCount).ticks() <= horizonTicks) {
      Edge edge = pending.get(settledCount++);
      compareBeatsBefore(edge.ticks(), edge.ticks(), over);
      settle(edge, over);
    }
    pending.subList(0, settledCount).clear();
    if (pending.isEmpty()) {
      pendingDamage.clear();
    }
    compareBeatsBefore(
        horizonTicks, pending.isEmpty() ? Long.MAX_VALUE : pending.get(0).ticks(), over);
    emitIfQuietAt(horizonTicks, over);
  }

  private void settle(Edge edge, List<Firing> over) {
    if (!settled.isEmpty()
        && (isQuietBefore(edge, settled.get(settled.size() - 1), levels)
            || isLingering(edge, settled, settledLightTicks, levels))) {
      emit(over);
    }
    settled.add(edge);
    if (edge.channel().isLight()) {
      settledLightTicks = OptionalLong.of(edge.ticks());
    }
    if (edge.ticks() <= pendingDamageUntilTicks) {
      settledDamage.addAll(pendingDamage);
    } else {
      pendingDamage.clear();
    }
    if (Boolean.valueOf(edge.high()).equals(levels.put(edge.channel(), edge.high()))) {
      settledDamage.add(Firing.Damage.CONTRADICTION);
    }
    changedTicks.put(edge.channel(), edge.ticks());
  }

  private void compareBeatsBefore(long ticks, long nextEdgeTicks, List<Firing> over) {
    while (!beats.isEmpty() && beats.peek().ticks() < ticks) {
      BeatLevels beat = beats.remove();
      emitIfQuietAt(beat.ticks(), over);
      for (Channel channel : Channel.values()) {
        compare(channel, beat, nextEdgeTicks);
      }
    }
  }

  private void compare(Channel channel, BeatLevels beat, long nextEdgeTicks) {
    boolean high = (beat.levels() >> channel.code() & 1) != 0;
    boolean nearEdge =
        nextEdgeTicks - beat.ticks() <= BEAT_SLACK_TICKS
            || (changedTicks.containsKey(channel)
                && beat.ticks() - changedTicks.get(channel) <= BEAT_SLACK_TICKS);
    if (nearEdge) {
      return;
    }
    Boolean known = levels.put(channel, high);
    if (known == null || known == high) {
      return;
    }
    if (settled.isEmpty()) {
      damageBetweenFirings++;
    } else {
      settledDamage.add(Firing.Damage.CONTRADICTION);
    }
  }

  private void emitIfQuietAt(long horizonTicks, List<Firing> over) {
    if (!settled.isEmpty()
        && !isLight(levels)
        && horizonTicks - settled.get(settled.size() - 1).ticks() > quietTicks) {
      emit(over);
    }
  }

  private void emit(List<Firing> over) {
    if (!settled.isEmpty()) {
      over.add(new Firing(settled, List.copyOf(settledDamage)));
      settled.clear();
      settledLightTicks = OptionalLong.empty();
      settledDamage.clear();
    }
  }

  private boolean isQuietBefore(Edge edge, Edge last, Map<Channel, Boolean> levels) {
    return edge.ticks() - last.ticks() > quietTicks && !isLight(levels);
  }

  /** Whether an edge of another channel comes too long after the light to belong to it. */
  private boolean isLingering(
      Edge edge, List<Edge> before, OptionalLong lightTicks, Map<Channel, Boolean> levels) {
    if (edge.channel().isLight() || isLight(levels)) {
      return false;
    }
    if (lightTicks.isEmpty()) {
      return edge.ticks() - before.get(0).ticks() > QUIETS_WITHOUT_LIGHT * quietTicks;
    }
    long dark = edge.ticks() - lightTicks.getAsLong();
    return dark > QUIETS_AFTER_LIGHT * quietTicks
        || (dark > quietTicks && isNewPress(edge, before));
  }

  /** A press, and not the bounce of a release that is let go. */
  private boolean isNewPress(Edge edge, List<Edge> before) {
    return edge.channel() == Channel.RELEASE
        && edge.high()
        && before.stream()
            .filter(earlier -> earlier.channel() == Channel.RELEASE)
            .allMatch(earlier -> edge.ticks() - earlier.ticks() > quietTicks);
  }

  private static boolean isLight(Map<Channel, Boolean> levels) {
    return levels.entrySet().stream().anyMatch(e -> e.getKey().isLight() && e.getValue());
  }
}
