package org.halflight.exposure;

import java.util.Objects;
import java.util.Optional;

/**
 * Where the two comparators of the centre sensor really switch, found by sweeping their thresholds
 * through steady light.
 *
 * @param low the comparator of the low level
 * @param high the comparator of the high level
 */
public record TripPoints(Comparator low, Comparator high) {
  /** Comparators that switch just where their thresholds stand. */
  public static final TripPoints EXACT = new TripPoints(Comparator.EXACT, Comparator.EXACT);

  /**
   * One comparator, in counts of the ten-bit converter.
   *
   * @param offsetCounts how far above its threshold the light is when it switches, the mean of both
   *     directions
   * @param hysteresisCounts how much higher the light is when it switches on rising than on falling
   *     light, 0 or more
   */
  public record Comparator(double offsetCounts, double hysteresisCounts) {
    /** Switches where its threshold stands. */
    public static final Comparator EXACT = new Comparator(0, 0);

    public Comparator {
      if (!Double.isFinite(offsetCounts) || !(hysteresisCounts >= 0)) {
        throw new IllegalArgumentException(
            "offset " + offsetCounts + " and hysteresis " + hysteresisCounts);
      }
    }

    /**
     * From a sweep of the threshold through steady light. A threshold that rises past the light is
     * to the comparator what falling light is, and the other way about.
     *
     * @param risingThresholdCounts threshold at the switch on its way up
     * @param fallingThresholdCounts threshold at the switch on its way down; by noise it may lie a
     *     little above the other one, which then counts as no hysteresis
     * @param lightCounts the steady light
     */
    public static Comparator ofSweep(
        double risingThresholdCounts, double fallingThresholdCounts, double lightCounts) {
      return new Comparator(
          lightCounts - (risingThresholdCounts + fallingThresholdCounts) / 2,
          Math.max(0, risingThresholdCounts - fallingThresholdCounts));
    }

    /** The light at which it switches on, for a threshold. */
    public double risingCounts(double thresholdCounts) {
      return thresholdCounts + offsetCounts + hysteresisCounts / 2;
    }

    /** The light at which it switches off, for a threshold. */
    public double fallingCounts(double thresholdCounts) {
      return thresholdCounts + offsetCounts - hysteresisCounts / 2;
    }
  }

  public TripPoints {
    Objects.requireNonNull(low);
    Objects.requireNonNull(high);
  }

  /**
   * The levels at which rising and falling light is really seen; empty where the light allows none.
   */
  public Optional<LevelCorrection> correction(LightLevels light) {
    if (!(light.levels() instanceof LightLevels.Known)) {
      return Optional.empty();
    }
    Optional<LevelPair> rising =
        pair(light, low.risingCounts(light.lowCounts()), high.risingCounts(light.highCounts()));
    Optional<LevelPair> falling =
        pair(light, low.fallingCounts(light.lowCounts()), high.fallingCounts(light.highCounts()));
    return rising.isPresent() && falling.isPresent()
        ? Optional.of(new LevelCorrection(rising.get(), falling.get()))
        : Optional.empty();
  }

  /**
   * The levels in the mean of rising and falling light; empty where the light allows none. Of exact
   * comparators they are those of the light itself.
   */
  public Optional<LevelPair> middle(LightLevels light) {
    return light.levels() instanceof LightLevels.Known
        ? pair(
            light, light.lowCounts() + low.offsetCounts(), light.highCounts() + high.offsetCounts())
        : Optional.empty();
  }

  private static Optional<LevelPair> pair(LightLevels light, double low, double high) {
    double span = light.fullCounts() - light.darkCounts();
    double q1 = (low - light.darkCounts()) / span;
    double q2 = (high - light.darkCounts()) / span;
    return q1 > 0 && q1 < q2 && q2 < 1 ? Optional.of(new LevelPair(q1, q2)) : Optional.empty();
  }
}
