package org.halflight.shuttermodel;

/**
 * The flash contact of a model shutter. All figures are invented.
 *
 * @param what how it behaves
 * @param afterOpenMillis from fully open to its first closing; below zero it closes before
 * @param scatterMillis standard deviation of that
 * @param bounces times that it opens again before it stays closed, 0 or more
 * @param bounceMillis from one closing to the next while it bounces or chatters, above zero
 */
public record ModelContact(
    What what, double afterOpenMillis, double scatterMillis, int bounces, double bounceMillis) {
  /** How a contact behaves. */
  public enum What {
    /** Closes, bounces or not, and opens when the blades begin to close. */
    CLOSES,
    /** Never closes, as with a broken wire. */
    NEVER,
    /** Always closed, as with a short. */
    ALWAYS_CLOSED,
    /** Opens and closes for ever once it was touched. */
    CHATTERS
  }

  public ModelContact {
    if (!Double.isFinite(afterOpenMillis)
        || !(scatterMillis >= 0)
        || bounces < 0
        || !(bounceMillis > 0)) {
      throw new IllegalArgumentException("a contact closes at a time and bounces 0 times or more");
    }
  }

  /** The same bent, so that it closes later. */
  ModelContact later(double millis) {
    return new ModelContact(what, afterOpenMillis + millis, scatterMillis, bounces, bounceMillis);
  }
}
