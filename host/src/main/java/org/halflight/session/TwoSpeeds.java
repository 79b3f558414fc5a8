package org.halflight.session;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;

/**
 * Two speeds that are adjusted at once: two firings at one, two at the other, in turn.
 *
 * @param first shown at the left
 * @param second shown at the right, another speed
 */
public record TwoSpeeds(MarkedSpeed first, MarkedSpeed second) {
  /** Firings of each after an adjustment: the fewest that have a scatter. */
  public static final int FIRINGS = 2;

  /**
   * The fastest speed that the train with its pallet usually governs lies at about 1/10, and the
   * next at 1/15 goes without: who moves a pallet watches both sides. Common practice, no source.
   */
  private static final double PALLET_SECONDS = 1 / 12.0;

  private static final double WITHOUT_PALLET_SECONDS = 1 / 16.0;

  public TwoSpeeds {
    if (first.equals(second)) {
      throw new IllegalArgumentException("two speeds are not one: " + first);
    }
  }

  /**
   * The usual pair to a speed, the slower one first: to a speed with the pallet the one nearest to
   * 1/15, to any other the slowest of the dial; to that the next.
   *
   * @return empty where the dial has no other speed
   */
  public static Optional<TwoSpeeds> with(MarkedSpeed speed, List<MarkedSpeed> dial) {
    Comparator<MarkedSpeed> near =
        Comparator.comparingDouble(
            each -> Math.abs(Stops.between(each.literalSeconds(), WITHOUT_PALLET_SECONDS)));
    Comparator<MarkedSpeed> slow = Comparator.comparingDouble(each -> -each.literalSeconds());
    return dial.stream()
        .filter(each -> !each.equals(speed))
        .min(speed.literalSeconds() > PALLET_SECONDS ? near : slow)
        .map(other -> of(speed, other));
  }

  /** Two speeds, the slower one first. */
  public static TwoSpeeds of(MarkedSpeed one, MarkedSpeed other) {
    return one.literalSeconds() >= other.literalSeconds()
        ? new TwoSpeeds(one, other)
        : new TwoSpeeds(other, one);
  }

  /** Whether a speed is one of the two. */
  public boolean has(MarkedSpeed speed) {
    return speed.equals(first) || speed.equals(second);
  }

  /** The other one. */
  public MarkedSpeed other(MarkedSpeed one) {
    return one.equals(first) ? second : first;
  }

  /**
   * Which is to be fired: the one that the dial is at until it has its firings, so that the dial is
   * turned once an adjustment; then the other until that has them; then the same again.
   *
   * @param here what is shown; a speed that is none of the two stays
   * @param since firings of a speed since the last adjustment
   */
  public MarkedSpeed next(MarkedSpeed here, ToIntFunction<MarkedSpeed> since) {
    return has(here) && since.applyAsInt(here) >= FIRINGS && since.applyAsInt(other(here)) < FIRINGS
        ? other(here)
        : here;
  }
}
