package org.halflight.signal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
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
 * <p>Edges of the knob contact stand beside the firings near them, and change nothing else: see
 * {@link Firing#knob} and {@link #drainLateKnob}.
 *
 * <p>Whatever was lost is told in its place between edges and beats. When it happened is known only
 * between the last time before it and the first after it, late time included, and every firing is
 * marked that lies nearer to this span than the quiet time: an edge may be missing there. A firing
 * that was handed over already can be reached too, where levels turn out to be wrong: see {@link
 * #drainLateDamage}.
 *
 * <p>Any edges and beats are taken, in any order and with any ticks. An edge that comes too late to
 * be put in its place goes to the firing under way, which is marked.
 *
 * <p>The work for an edge does not grow with the firing.
 *
 * <p>All ticks are widened to 64 bits. Not safe for use by several threads. No clock is read: time
 * passes only by edges and by {@link #advance}.
 */
public final class FiringGrouper {
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

  /** Before all ticks, and far enough from the end of the numbers to take times from it. */
  private static final long NEVER = Long.MIN_VALUE / 2;

  private record BeatLevels(long ticks, int levels) {}

  /**
   * Damage that reaches back to firings that were handed over.
   *
   * @param sinceTicks a firing may be concerned that was not over, its quiet time included, by then
   */
  public record LateDamage(Firing.Damage damage, long sinceTicks) {}

  /**
   * What the knob contact did after a firing was handed over and still near it.
   *
   * @param firstTicks the first edge of the firing
   */
  public record LateKnob(long firstTicks, List<Edge> edges) {}

  private final long quietTicks;
  private final long lateTicks;

  /**
   * Levels and ticks of a beat are not read in one instant, so an edge this near to a beat settles
   * nothing.
   */
  private final long beatSlackTicks;

  private FiringUnderway settled = new FiringUnderway();
  private final PendingEdges pending = new PendingEdges();
  private final KnobTrail knob;
  private final DamageSpans spans = new DamageSpans();
  private final Deque<BeatLevels> beats = new ArrayDeque<>();
  private final Map<Channel, Boolean> levels = new EnumMap<>(Channel.class);
  private final Map<Channel, Long> changedTicks = new EnumMap<>(Channel.class);

  /** Until when the level of a channel is sure: its last edge, or a beat that agreed. */
  private final Map<Channel, Long> sureTicks = new EnumMap<>(Channel.class);

  /** Light whose beginning was lost: the firing that begins in it is not whole. */
  private final Set<Firing.Damage> lightDamage = EnumSet.noneOf(Firing.Damage.class);

  private List<LateDamage> lateDamage = new ArrayList<>();
  private long latestTicks = NEVER;
  private long horizonTicks = NEVER;

  /** The last edge of all firings that were handed over. */
  private long overTicks = NEVER;

  private long damageBetweenFirings;

  /**
   * @param quietTicks the quiet time, above zero
   * @param board whose edges they are
   */
  public FiringGrouper(long quietTicks, BoardTraits board) {
    if (quietTicks <= 0) {
      throw new IllegalArgumentException("quiet time must be above zero: " + quietTicks);
    }
    this.quietTicks = quietTicks;
    lateTicks = board.lateTicks();
    beatSlackTicks = board.beatSlackTicks();
    knob = new KnobTrail(board);
  }

  /**
   * Takes an edge.
   *
   * @return the firings that are over by now, in order; mostly none
   */
  public List<Firing> add(Edge edge) {
    spans.close(edge.ticks() + lateTicks, false);
    if (edge.channel() == Channel.KNOB) {
      knob.add(edge);
    } else {
      pending.add(edge);
    }
    return passTo(edge.ticks());
  }

  /**
   * Lets time pass: nothing more will come from before {@code nowTicks} less the late time.
   *
   * @return the firings that are over by now, in order
   */
  public List<Firing> advance(long nowTicks) {
    spans.close(nowTicks + lateTicks, false);
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
    spans.close(Math.max(nowTicks, pending.greatestTicks()) + lateTicks, true);
    beats.add(new BeatLevels(nowTicks, levelMask));
    return passTo(nowTicks);
  }

  /**
   * Takes note that something was lost after all that came so far and before what comes next. It
   * belongs to every firing that may lack an edge by it; with none under way it is also counted.
   */
  public void damage(Firing.Damage damage) {
    damage(damage, latestTicks == NEVER ? NEVER : latestTicks - lateTicks, false);
  }

  /**
   * Takes note that what came since a time is not to be trusted, up to the next beat.
   *
   * @param sinceTicks may lie before firings that were handed over; whoever keeps them marks those
   */
  public void damageSince(Firing.Damage damage, long sinceTicks) {
    damage(damage, sinceTicks, true);
  }

  private void damage(Firing.Damage damage, long fromTicks, boolean untilBeat) {
    if (!isUnderway()) {
      damageBetweenFirings++;
    }
    spans.open(damage, fromTicks, untilBeat);
  }

  /**
   * Takes note of whether edges were among the lines that went missing since this was last called.
   * Where none was, no firing that begins from here on is marked for these lines.
   */
  public void edgesCounted(boolean allCame) {
    spans.edgesCounted(allCame);
  }

  /** How much damage came while no firing was under way. */
  public long damageBetweenFirings() {
    return damageBetweenFirings;
  }

  /** Damage that was found since this was last asked, and that reaches back. */
  public List<LateDamage> drainLateDamage() {
    if (lateDamage.isEmpty()) {
      return List.of();
    }
    List<LateDamage> taken = lateDamage;
    lateDamage = new ArrayList<>();
    return taken;
  }

  /** What the knob contact did near firings that were handed over, once their time has passed. */
  public List<LateKnob> drainLateKnob() {
    return knob.drainLate();
  }

  /** The quiet time, in ticks. */
  public long quietTicks() {
    return quietTicks;
  }

  /** How late edges may come, in ticks. */
  public long lateTicks() {
    return lateTicks;
  }

  /** Whether edges came that belong to no firing that was handed over. */
  public boolean isUnderway() {
    return !settled.isEmpty() || !pending.isEmpty();
  }

  /** Ticks of the first edge of the firing under way. */
  public OptionalLong underwaySinceTicks() {
    return settled.isEmpty() ? pending.firstTicks() : OptionalLong.of(settled.firstTicks());
  }

  /** Whether anything but sounds and the flash contact is under way. */
  public boolean isMoreThanNoise() {
    return settled.isMoreThanNoise() || pending.isMoreThanNoise();
  }

  /** Edges of the centre sensor under way; a figure can be another one only when there are more. */
  public int centreEdges() {
    return settled.centreEdges() + pending.centreEdges();
  }

  /** Since when the low level of the centre sensor has seen light in the firing under way. */
  public OptionalLong openSinceTicks() {
    Optional<Edge> last = pending.last(Channel.CENTRE_LOW);
    if (last.isEmpty()) {
      return settled.openSinceTicks();
    }
    return last.get().high() ? OptionalLong.of(last.get().ticks()) : OptionalLong.empty();
  }

  /** The firing under way as far as it is known, for a provisional figure. */
  public Optional<Firing> underway() {
    if (!isUnderway()) {
      return Optional.empty();
    }
    FiringUnderway all = settled.copy();
    Map<Channel, Boolean> after = new EnumMap<>(Channel.class);
    after.putAll(levels);
    for (Edge edge : pending.inOrder()) {
      if (!all.isEmpty() && endsBefore(edge, all, after)) {
        break;
      }
      if (all.isEmpty() && isLight(after)) {
        all.damage().addAll(lightDamage);
      }
      all.add(edge);
      if (Boolean.valueOf(edge.high()).equals(after.put(edge.channel(), edge.high()))) {
        all.damage().add(Firing.Damage.CONTRADICTION);
      }
    }
    return Optional.of(firing(all, isLight(after)));
  }

  /** Whether a light channel is high by the edges and beats so far. */
  public boolean isLight() {
    for (Channel channel : Channel.values()) {
      if (channel.isLight()
          && pending
              .last(channel)
              .map(Edge::high)
              .orElseGet(() -> levels.getOrDefault(channel, false))) {
        return true;
      }
    }
    return false;
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

  /** Ends here because a record ends, with nothing more known to be lost than was told. */
  public List<Firing> finish() {
    List<Firing> over = new ArrayList<>();
    settleUpTo(Long.MAX_VALUE, over);
    emit(over);
    beats.clear();
    levels.clear();
    changedTicks.clear();
    sureTicks.clear();
    lightDamage.clear();
    spans.clear();
    knob.forget();
    latestTicks = NEVER;
    horizonTicks = NEVER;
    overTicks = NEVER;
    return over;
  }

  private List<Firing> passTo(long ticks) {
    latestTicks = Math.max(latestTicks, ticks);
    List<Firing> over = new ArrayList<>();
    settleUpTo(latestTicks - lateTicks, over);
    return over;
  }

  /** Moves everything up to the horizon, edges and levels of beats in order of ticks. */
  private void settleUpTo(long ticks, List<Firing> over) {
    while (pending.nextTicks() <= ticks && !pending.isEmpty()) {
      Edge edge = pending.remove();
      compareBeatsBefore(edge.ticks(), edge.ticks(), over);
      settle(edge, over);
    }
    compareBeatsBefore(ticks, pending.isEmpty() ? Long.MAX_VALUE : pending.nextTicks(), over);
    emitIfQuietAt(ticks, over);
    horizonTicks = Math.max(horizonTicks, ticks);
    forgetSpans(ticks);
    knob.passed(ticks);
  }

  private void settle(Edge edge, List<Firing> over) {
    if (!settled.isEmpty() && edge.ticks() < settled.lastTicks()) {
      settleLate(edge);
      return;
    }
    Set<Firing.Damage> goesOn = EnumSet.noneOf(Firing.Damage.class);
    if (!settled.isEmpty() && endsBefore(edge, settled, levels)) {
      boolean cutUp = !isQuietBefore(edge, settled, levels) && !isNewPress(edge, settled);
      List<Firing.Damage> before = emit(over);
      if (cutUp) {
        // Where noise without end is cut depends on what came before the cut.
        goesOn.addAll(before);
      }
    }
    if (settled.isEmpty()) {
      settled.damage().addAll(goesOn);
      if (isLight(levels)) {
        settled.damage().addAll(lightDamage);
      }
    }
    if (settled.isEmpty() || (settled.lightTicks().isEmpty() && edge.channel().isLight())) {
      knob.begins(edge.ticks());
    }
    settled.add(edge);
    if (edge.ticks() < horizonTicks && edge.ticks() - overTicks <= quietTicks) {
      // It belongs to a firing that was handed over without it.
      settled.damage().add(Firing.Damage.CONTRADICTION);
      lateDamage.add(new LateDamage(Firing.Damage.CONTRADICTION, edge.ticks()));
    }
    change(edge);
  }

  /** An edge that comes behind the late time, in its place among those that were settled. */
  private void settleLate(Edge edge) {
    boolean inOrder =
        edge.ticks() >= settled.firstTicks()
            && edge.ticks() >= changedTicks.getOrDefault(edge.channel(), edge.ticks());
    settled.addLate(edge);
    if (!inOrder) {
      // Nobody knows what it would have changed.
      settled.damage().add(Firing.Damage.CONTRADICTION);
    }
    change(edge);
  }

  private void change(Edge edge) {
    if (Boolean.valueOf(edge.high()).equals(levels.put(edge.channel(), edge.high()))) {
      settled.damage().add(Firing.Damage.CONTRADICTION);
    }
    changedTicks.put(edge.channel(), edge.ticks());
    sureTicks.put(edge.channel(), edge.ticks());
    forgetLightDamageInTheDark();
  }

  private void compareBeatsBefore(long ticks, long nextEdgeTicks, List<Firing> over) {
    while (!beats.isEmpty() && beats.peek().ticks() < ticks) {
      BeatLevels beat = beats.remove();
      emitIfQuietAt(beat.ticks(), over);
      for (Channel channel : Channel.values()) {
        if (channel != Channel.KNOB) {
          compare(channel, beat, nextEdgeTicks);
        }
      }
      forgetLightDamageInTheDark();
    }
  }

  private void compare(Channel channel, BeatLevels beat, long nextEdgeTicks) {
    boolean high = (beat.levels() >> channel.code() & 1) != 0;
    boolean nearEdge =
        nextEdgeTicks - beat.ticks() <= beatSlackTicks
            || (changedTicks.containsKey(channel)
                && beat.ticks() - changedTicks.get(channel) <= beatSlackTicks);
    if (nearEdge) {
      return;
    }
    Boolean known = levels.put(channel, high);
    if (known == null || known == high) {
      if (known == null && high && channel.isLight()) {
        // It may have begun in what was lost.
        spans.addTouching(beat.ticks() - quietTicks, Long.MAX_VALUE, lightDamage);
      }
      sureTicks.put(channel, beat.ticks());
      return;
    }
    long since = sureTicks.getOrDefault(channel, beat.ticks());
    sureTicks.put(channel, beat.ticks());
    spans.add(Firing.Damage.CONTRADICTION, since, beat.ticks());
    if (high && channel.isLight()) {
      lightDamage.add(Firing.Damage.CONTRADICTION);
    }
    if (settled.isEmpty()) {
      damageBetweenFirings++;
      lateDamage.add(new LateDamage(Firing.Damage.CONTRADICTION, since));
    } else {
      settled.damage().add(Firing.Damage.CONTRADICTION);
      if (since < settled.firstTicks()) {
        lateDamage.add(new LateDamage(Firing.Damage.CONTRADICTION, since));
      }
    }
  }

  private void forgetLightDamageInTheDark() {
    if (!lightDamage.isEmpty() && !isLight(levels)) {
      lightDamage.clear();
    }
  }

  /** What was lost so long ago that no later firing is near it. */
  private void forgetSpans(long ticks) {
    if (spans.isEmpty() || ticks == Long.MAX_VALUE) {
      return;
    }
    if (!settled.isEmpty()) {
      // Up to here, and no further: the firing may be over before the spans that are left.
      spans.addTouching(
          settled.firstTicks() - quietTicks,
          isLight(levels) ? ticks : Math.min(ticks, settled.lastTicks() + quietTicks),
          settled.damage());
    }
    spans.forgetBefore(ticks - quietTicks);
  }

  private void emitIfQuietAt(long ticks, List<Firing> over) {
    if (!settled.isEmpty() && !isLight(levels) && ticks - settled.lastTicks() > quietTicks) {
      emit(over);
    }
  }

  private List<Firing.Damage> emit(List<Firing> over) {
    if (settled.isEmpty()) {
      return List.of();
    }
    Firing firing = firing(settled, isLight(levels)).withKnob(knob.ends(settled.firstTicks()));
    over.add(firing);
    overTicks = Math.max(overTicks, firing.lastTicks());
    settled = new FiringUnderway();
    return firing.damage();
  }

  /** A firing with all the damage that may have touched it; in light it is not over. */
  private Firing firing(FiringUnderway underway, boolean inLight) {
    Set<Firing.Damage> damage = EnumSet.noneOf(Firing.Damage.class);
    damage.addAll(underway.damage());
    spans.addTouching(
        underway.firstTicks() - quietTicks,
        inLight ? Long.MAX_VALUE : underway.lastTicks() + quietTicks,
        damage);
    return new Firing(underway.edges(), List.copyOf(damage));
  }

  private boolean endsBefore(Edge edge, FiringUnderway before, Map<Channel, Boolean> levels) {
    return isQuietBefore(edge, before, levels) || isLingering(edge, before, levels);
  }

  private boolean isQuietBefore(Edge edge, FiringUnderway before, Map<Channel, Boolean> levels) {
    return edge.ticks() - before.lastTicks() > quietTicks && !isLight(levels);
  }

  /** Whether an edge of another channel comes too long after the light to belong to it. */
  private boolean isLingering(Edge edge, FiringUnderway before, Map<Channel, Boolean> levels) {
    if (edge.channel().isLight() || isLight(levels)) {
      return false;
    }
    if (before.lightTicks().isEmpty()) {
      return edge.ticks() - before.firstTicks() > QUIETS_WITHOUT_LIGHT * quietTicks;
    }
    long dark = edge.ticks() - before.lightTicks().getAsLong();
    return dark > QUIETS_AFTER_LIGHT * quietTicks
        || (dark > quietTicks && isNewPress(edge, before));
  }

  /** A press, and not the bounce of a release that is let go. */
  private boolean isNewPress(Edge edge, FiringUnderway before) {
    return edge.channel() == Channel.RELEASE
        && edge.high()
        && (before.releaseTicks().isEmpty()
            || edge.ticks() - before.releaseTicks().getAsLong() > quietTicks);
  }

  private static boolean isLight(Map<Channel, Boolean> levels) {
    for (Map.Entry<Channel, Boolean> each : levels.entrySet()) {
      if (each.getKey().isLight() && each.getValue()) {
        return true;
      }
    }
    return false;
  }
}
