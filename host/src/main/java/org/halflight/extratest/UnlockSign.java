package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * When the film advance unlocked in a slow squeeze, as far as the rig saw or heard it. The contact
 * at the wind knob tells, when its foil leaves the wire. A rig without it listens: a click tells
 * where nothing else can have made it. Pawls that are lifted can be silent, so often nothing tells.
 *
 * @param aheadSeconds how long before first light, below zero after it; empty where nothing tells
 * @param by what tells, or why nothing does
 */
public record UnlockSign(OptionalDouble aheadSeconds, By by) {
  /** What tells when the advance unlocked. */
  public enum By {
    /** The contact at the wind knob. */
    KNOB,
    /** One click, apart from all that the shutter and the button do. */
    CLICK,
    /** No knob moved and no click stood apart. */
    NOTHING,
    /** The knob moved more than once, or several clicks stood apart. */
    SEVERAL,
    /** The contact at the knob chatters without end. */
    CHATTER
  }

  /** Nothing tells. */
  public static final UnlockSign NONE = new UnlockSign(OptionalDouble.empty(), By.NOTHING);

  /** A click nearer than this to first light is the shutter's, in seconds. Our own limit. */
  public static final double APART_SECONDS = 0.02;

  /**
   * Moves of the foil nearer to each other than this are one, in seconds: two looks of the
   * firmware, which skips 4.1 to 6.1 ms after each. Our own limit.
   */
  static final double BOUNCE_SECONDS = 0.0125;

  /** More changes than this in one move are chatter. Our own limit. */
  static final int MOST_BOUNCES = 8;

  /**
   * A squeeze begins this long before light at most, in seconds: as long as knob edges are kept.
   */
  static final double LONGEST_SQUEEZE_SECONDS = 3;

  /**
   * Where the button is not wired: what comes later than this after first light is the hand that
   * has let go and tries the wind, in seconds. Our own limit.
   */
  static final double HAND_SECONDS = 0.5;

  /**
   * One change of the foil, its bounces left out.
   *
   * @param leaves whether it leaves the wire
   */
  private record Move(long ticks, boolean leaves, int edges) {}

  /** From the press of the button to its return, with the light in between. */
  private record Squeeze(long from, long light, long to) {}

  /** The sign of a press; none of one that was no slow squeeze, or brought no light. */
  static UnlockSign of(LinkagePress press) {
    Optional<FiringResult> trip =
        press.firings().stream()
            .filter(LinkagePress::isTrip)
            .filter(f -> f.firing().damage().isEmpty())
            .findFirst();
    if (press.step() != LinkageStep.SQUEEZE || trip.isEmpty()) {
      return NONE;
    }
    List<Firing> near =
        press.firings().stream()
            .filter(f -> f.key().rigSerial().equals(trip.get().key().rigSerial()))
            .filter(f -> f.key().bootCount() == trip.get().key().bootCount())
            .map(FiringResult::firing)
            .toList();
    Firing all =
        new Firing(
            near.stream().flatMap(firing -> firing.edges().stream()).toList(),
            List.of(),
            near.stream().flatMap(firing -> firing.knob().stream()).distinct().toList());
    return of(all, trip.get().firing(), trip.get().rate());
  }

  /**
   * The sign in the edges around a firing.
   *
   * @param all edges of the press
   * @param trip those of the light, among them
   */
  static UnlockSign of(Firing all, Firing trip, TickRate rate) {
    Squeeze squeeze = squeeze(all, trip, rate);
    List<Edge> knob = all.of(Channel.KNOB);
    return knob.isEmpty() ? byClick(all, squeeze, rate) : byKnob(knob, squeeze, rate);
  }

  private static Squeeze squeeze(Firing all, Firing trip, TickRate rate) {
    List<Edge> light = trip.edges().stream().filter(edge -> edge.channel().isLight()).toList();
    long first = light.get(0).ticks();
    List<Edge> button = all.of(Channel.RELEASE);
    OptionalLong pressed =
        button.stream().filter(e -> e.high() && e.ticks() <= first).mapToLong(Edge::ticks).max();
    OptionalLong let =
        button.stream().filter(e -> !e.high() && e.ticks() > first).mapToLong(Edge::ticks).min();
    return new Squeeze(
        pressed.orElse(first - rate.ticks(LONGEST_SQUEEZE_SECONDS)),
        first,
        let.orElse(first + rate.ticks(HAND_SECONDS)));
  }

  private static UnlockSign byKnob(List<Edge> knob, Squeeze squeeze, TickRate rate) {
    List<Move> within =
        moves(knob, rate.ticks(BOUNCE_SECONDS)).stream()
            .filter(move -> move.ticks() >= squeeze.from() && move.ticks() <= squeeze.to())
            .toList();
    if (within.stream().anyMatch(move -> move.edges() > MOST_BOUNCES)) {
      return new UnlockSign(OptionalDouble.empty(), By.CHATTER);
    }
    return one(
        within.stream().filter(Move::leaves).map(Move::ticks).toList(), squeeze, rate, By.KNOB);
  }

  private static List<Move> moves(List<Edge> knob, long bounceTicks) {
    List<Move> moves = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= knob.size(); i++) {
      if (i < knob.size() && knob.get(i).ticks() - knob.get(i - 1).ticks() < bounceTicks) {
        continue;
      }
      boolean touchedBefore = !knob.get(from).high();
      boolean leaves = touchedBefore && !knob.get(i - 1).high();
      moves.add(new Move(knob.get(from).ticks(), leaves, i - from));
      from = i;
    }
    return moves;
  }

  /**
   * Only a click before light tells: while the blades are open the slow-speed train sounds, and
   * after it the button knocks at the end of its stroke.
   */
  private static UnlockSign byClick(Firing all, Squeeze squeeze, TickRate rate) {
    List<Long> onsets =
        Clicks.of(all, Channel.CLICK, rate)
            .between(squeeze.from(), squeeze.light() - rate.ticks(APART_SECONDS))
            .stream()
            .filter(click -> !click.crowded())
            .map(Click::onsetTicks)
            .toList();
    return one(onsets, squeeze, rate, By.CLICK);
  }

  private static UnlockSign one(List<Long> ticks, Squeeze squeeze, TickRate rate, By by) {
    if (ticks.isEmpty()) {
      return NONE;
    }
    return ticks.size() == 1
        ? new UnlockSign(OptionalDouble.of(rate.seconds(squeeze.light() - ticks.get(0))), by)
        : new UnlockSign(OptionalDouble.empty(), By.SEVERAL);
  }
}
