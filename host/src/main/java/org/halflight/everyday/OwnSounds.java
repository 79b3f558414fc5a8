package org.halflight.everyday;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.stats.Sample;

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
   */
  public record OwnSound(double beforeSeconds, double reachSeconds) {
    boolean holds(double seconds) {
      return Math.abs(seconds - beforeSeconds) <= reachSeconds;
    }
  }

  /** Nothing was learnt: the blades sound from 2 ms before the opening to 1 ms after. */
  static final OwnSounds CUSTOM = new OwnSounds(List.of(new OwnSound(0.0005, 0.0015)), From.CUSTOM);

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
   * @param firings for each the times from the onsets of its clicks to the opening, in seconds
   */
  static Optional<OwnSounds> alone(List<List<Double>> firings) {
    if (firings.size() < LEAST_ALONE) {
      return Optional.empty();
    }
    List<OwnSound> sounds = new ArrayList<>();
    for (double first : firings.get(0)) {
      List<Double> same = new ArrayList<>();
      for (List<Double> firing : firings) {
        nearest(firing, first).ifPresent(same::add);
      }
      if (same.size() == firings.size()) {
        sounds.add(sound(same));
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
        : Optional.of(new OwnSounds(List.of(sound(near)), From.TRIALS));
  }

  private static OwnSound sound(List<Double> times) {
    Sample sample = Sample.of(times);
    double scatter = sample.sd().known().orElse(0.0);
    return new OwnSound(
        sample.mean().known().orElseThrow(), LinkageTrial.CLICK_SECONDS + 2 * scatter);
  }

  private static OptionalDouble nearest(List<Double> times, double to) {
    return times.stream()
        .mapToDouble(Double::doubleValue)
        .filter(time -> Math.abs(time - to) <= STEADY_SECONDS)
        .boxed()
        .min(java.util.Comparator.comparingDouble(time -> Math.abs(time - to)))
        .map(OptionalDouble::of)
        .orElseGet(OptionalDouble::empty);
  }
}
