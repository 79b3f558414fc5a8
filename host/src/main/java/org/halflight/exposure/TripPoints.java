package org.halflight.exposure;

import java.util.Optional;
import org.halflight.profile.ComparatorTrips;

/**
 * Where the two comparators of the centre sensor really switch, found by sweeping their thresholds
 * through steady light.
 *
 * @param low the comparator of the low level
 * @param high the comparator of the high level
 */
public record TripPoints(ComparatorTrips low, ComparatorTrips high) {
  /** Comparators that switch just where their thresholds stand. */
  public static final TripPoints EXACT =
      new TripPoints(ComparatorTrips.EXACT, ComparatorTrips.EXACT);

  /**
   * The levels at which rising and falling light is really seen; empty where the light allows none.
   */
  public Optional<LevelCorrection> correction(LightLevels light) {
    if (!(light.levels() instanceof LightLevels.Known)) {
      return Optional.empty();
    }
    Optional<LevelPair> rising =
        pair(
            light,
            light.lowCounts() + low.risingCounts(),
            light.highCounts() + high.risingCounts());
    Optional<LevelPair> falling =
        pair(
            light,
            light.lowCounts() + low.fallingCounts(),
            light.highCounts() + high.fallingCounts());
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
