package org.halflight.stats;

/**
 * An interval with its confidence.
 *
 * @param low lower end, may be minus infinity where the level cannot be reached
 * @param high upper end
 * @param level the confidence that it really has, above 0 and below 1; for exact rank methods this
 *     is not the one that was asked for but the next that exists
 */
public record Interval(double low, double high, double level) {
  public Interval {
    if (!(low <= high)) {
      throw new IllegalArgumentException("an interval runs from low to high: " + low + " " + high);
    }
    checkLevel(level);
  }

  /** Whether a value lies within or on an end. */
  public boolean contains(double value) {
    return low <= value && value <= high;
  }

  static void checkLevel(double level) {
    if (!(level > 0 && level < 1)) {
      throw new IllegalArgumentException("a level is above 0 and below 1, not " + level);
    }
  }
}
