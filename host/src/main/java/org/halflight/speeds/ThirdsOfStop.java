package org.halflight.speeds;

/**
 * A whole number of thirds of a stop, the steps in which exposure is set by hand.
 *
 * @param thirds above zero: give more exposure; below zero: give less
 */
public record ThirdsOfStop(int thirds) {
  /**
   * What makes up for the error of a shutter, to the nearest third: a shutter that is slow gives
   * too much light, so less is asked for. Half-way goes to the smaller step.
   *
   * @param errorStops error of the shutter, above zero is slow
   */
  public static ThirdsOfStop toCompensate(double errorStops) {
    if (!(Math.abs(errorStops) < 1000)) {
      throw new IllegalArgumentException("not an error in stops: " + errorStops);
    }
    int size = (int) Math.ceil(3 * Math.abs(errorStops) - 0.5);
    return new ThirdsOfStop(errorStops > 0 ? -size : size);
  }

  /** The same in stops. */
  public double stops() {
    return thirds / 3.0;
  }
}
