package org.halflight.everyday;

/**
 * From where to where the film advance may free before the blades, in seconds; below zero it frees
 * after them.
 *
 * <p>That it is to free first, by a hair, and is to be adjusted when it does so by a plain margin,
 * is trade custom (common practice, no source). How long a hair is, nobody has put a number to: the
 * usual limits are our choice and the user's to change.
 *
 * @param leastSeconds less than this is too late
 * @param mostSeconds more than this is too early
 */
public record LinkageLimits(double leastSeconds, double mostSeconds) {
  /** From together to 3 ms before; our choice. */
  public static final LinkageLimits USUAL = new LinkageLimits(0, 0.003);

  public LinkageLimits {
    if (!Double.isFinite(leastSeconds)
        || !Double.isFinite(mostSeconds)
        || mostSeconds <= leastSeconds) {
      throw new IllegalArgumentException(
          "limits go from low to high: " + leastSeconds + ", " + mostSeconds);
    }
  }
}
