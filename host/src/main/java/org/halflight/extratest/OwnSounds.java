package org.halflight.extratest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;

/**
 * What the shutter itself sounds like around its opening, so that what is left is the film advance.
 *
 * @param sounds each apart from the others
 * @param from how it is known
 */
public record OwnSounds(List<OwnSound> sounds, From from) {
  /** How it is known. */
  public enum From {
    /** Heard with the film advance already free. */
    RELEASE_ALONE,
    /** Stood still next to the opening in several trials while the advance was heard apart. */
    TRIALS,
    /**
     * Not known: that the blades sound near first light is common practice, no source; how near is
     * our choice.
     */
    CUSTOM
  }

  /**
   * One sound of the shutter.
   *
   * @param beforeSeconds mean time from its onset to the opening; below zero it comes after
   * @param reachSeconds a click that begins within this of it is taken for it
   * @param ringing of it, where it was heard alone
   */
  public record OwnSound(double beforeSeconds, double reachSeconds, Optional<Ringing> ringing) {
    boolean holds(double seconds) {
      return Math.abs(seconds - beforeSeconds) <= reachSeconds;
    }
  }

  /**
   * How a sound rings.
   *
   * @param seconds from its onset to its last edge, at most
   * @param pauseSeconds the longest pause in it; 0 where none is worth noting
   */
  public record Ringing(double seconds, double pauseSeconds) {
    /** A pause this much longer than those of the ringing itself is none of them. */
    private static final double OF_ANOTHER = 1.5;

    /**
     * Where in a click that begins with this sound another one begins: at the first edge behind a
     * pause, once this sound has died away and nothing has rung for longer than it does. Empty
     * where it cannot be told.
     */
    Optional<Click> nextIn(Click click, TickRate rate) {
      long over = click.onsetTicks() + rate.ticks(seconds + AdvanceTrial.CLICK_SECONDS);
      long pause = rate.ticks(Math.max(Clicks.PAUSE_SECONDS, OF_ANOTHER * pauseSeconds));
      return click.pauses().stream()
          .filter(quiet -> quiet.fromTicks() <= over && quiet.toTicks() > over)
          .filter(quiet -> quiet.ticks() >= pause)
          .map(click::from)
          .findFirst();
    }
  }

  /**
   * A click of a firing with the film advance already free.
   *
   * @param beforeSeconds from its onset to the opening
   */
  record Heard(double beforeSeconds, Ringing ringing) {}

  /** Nothing was learnt: the blades sound from 2 ms before the opening to 1 ms after. */
  static final OwnSounds CUSTOM =
      new OwnSounds(List.of(new OwnSound(0.0005, 0.0015, Optional.empty())), From.CUSTOM);

  /** Less than this learns nothing. */
  static final int LEAST_ALONE = 2;

  static final int LEAST_TRIALS = 3;

  /** A sound of the shutter itself comes at the same time from firing to firing, within this. */
  private static final double STEADY_SECONDS = 0.001;

  /** In trials, where the advance may take the place of the blades, it must be steadier. */
  private static final double STEADY_IN_TRIALS_SECONDS = 0.0003;

  public OwnSounds {
    sounds = List.copyOf(sounds);
  }

  /** Whether it was heard and is not only supposed. */
  public boolean isLearnt() {
    return from != From.CUSTOM;
  }

  /** The sound of the shutter that a click is, if it is one. */
  Optional<OwnSound> of(double beforeSeconds) {
    return sounds.stream().filter(sound -> sound.holds(beforeSeconds)).findFirst();
  }

  /**
   * Learns from firings with the advance already free.
   *
   * @param firings for each the clicks near its opening
   */
  static Optional<OwnSounds> alone(List<List<Heard>> firings) {
    if (firings.size() < LEAST_ALONE) {
      return Optional.empty();
    }
    List<OwnSound> sounds = new ArrayList<>();
    for (Heard first : firings.get(0)) {
      List<Heard> same = new ArrayList<>();
      for (List<Heard> firing : firings) {
        nearest(firing, first.beforeSeconds()).ifPresent(same::add);
      }
      if (same.size() == firings.size()) {
        sounds.add(
            sound(same.stream().map(Heard::beforeSeconds).toList(), Optional.of(longest(same))));
      }
    }
    return Optional.of(new OwnSounds(sounds, From.RELEASE_ALONE));
  }

  /**
   * Learns from trials that had one click near the opening and another one apart.
   *
   * @param near the times from the near click to the opening, in seconds
   */
  static Optional<OwnSounds> trials(List<Double> near) {
    double least = near.stream().mapToDouble(Double::doubleValue).min().orElse(0);
    double most = near.stream().mapToDouble(Double::doubleValue).max().orElse(0);
    return near.size() < LEAST_TRIALS || most - least > STEADY_IN_TRIALS_SECONDS
        ? Optional.empty()
        : Optional.of(new OwnSounds(List.of(sound(near, Optional.empty())), From.TRIALS));
  }

  private static OwnSound sound(List<Double> times, Optional<Ringing> ringing) {
    Sample sample = Sample.of(times);
    double scatter = sample.sd().known().orElse(0.0);
    return new OwnSound(
        sample.mean().known().orElseThrow(), AdvanceTrial.CLICK_SECONDS + 2 * scatter, ringing);
  }

  private static Ringing longest(List<Heard> same) {
    return new Ringing(
        same.stream().mapToDouble(heard -> heard.ringing().seconds()).max().orElse(0),
        same.stream().mapToDouble(heard -> heard.ringing().pauseSeconds()).max().orElse(0));
  }

  private static Optional<Heard> nearest(List<Heard> heard, double to) {
    return heard.stream()
        .filter(each -> Math.abs(each.beforeSeconds() - to) <= STEADY_SECONDS)
        .min(Comparator.comparingDouble(each -> Math.abs(each.beforeSeconds() - to)));
  }
}
