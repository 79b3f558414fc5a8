package org.halflight.shuttermodel;

/**
 * What a model shutter does at one marked speed.
 *
 * @param offsetStops mean effective time against the exact time of the marking, in stops; above
 *     zero is slow
 * @param scatterStops standard deviation from firing to firing, in stops
 * @param creepStops how much slower each further firing at this speed is, in stops, until the
 *     {@value #CREEP_FIRINGS}th since the last rest
 * @param afterRestStops how much slower the first firing after a rest is, in stops
 * @param hangChance the chance that the blades open and stay open
 * @param shutChance the chance that the blades do not open
 * @param peak the fraction of full light that the blades reach at most, above 0 up to 1; speeds
 *     shorter than opening and closing together peak lower by themselves
 */
public record SpeedBehaviour(
    double offsetStops,
    double scatterStops,
    double creepStops,
    double afterRestStops,
    double hangChance,
    double shutChance,
    double peak) {
  /** After so many firings at a speed its creep has come to an end. */
  public static final int CREEP_FIRINGS = 20;

  public SpeedBehaviour {
    if (!Double.isFinite(offsetStops)
        || !Double.isFinite(creepStops)
        || !Double.isFinite(afterRestStops)
        || !(scatterStops >= 0)
        || !Double.isFinite(scatterStops)) {
      throw new IllegalArgumentException("stops are finite, and scatter is not below zero");
    }
    if (!(hangChance >= 0) || !(shutChance >= 0) || !(hangChance + shutChance <= 1)) {
      throw new IllegalArgumentException("chances are 0 or more and together at most 1");
    }
    if (!(peak > 0 && peak <= 1)) {
      throw new IllegalArgumentException("the peak is above 0 and at most 1, not " + peak);
    }
  }

  /** Always opens fully and closes; no creep, no lag after rest. */
  public static SpeedBehaviour of(double offsetStops, double scatterStops) {
    return new SpeedBehaviour(offsetStops, scatterStops, 0, 0, 0, 0, 1);
  }

  /** The same, slower by some stops. */
  SpeedBehaviour slowedBy(double stops) {
    return new SpeedBehaviour(
        offsetStops + stops,
        scatterStops,
        creepStops,
        afterRestStops,
        hangChance,
        shutChance,
        peak);
  }

  /** The same with creep, in stops a firing. */
  public SpeedBehaviour withCreep(double stops) {
    return new SpeedBehaviour(
        offsetStops, scatterStops, stops, afterRestStops, hangChance, shutChance, peak);
  }

  /** The same with a slower first firing after rest, in stops. */
  public SpeedBehaviour withAfterRest(double stops) {
    return new SpeedBehaviour(
        offsetStops, scatterStops, creepStops, stops, hangChance, shutChance, peak);
  }

  /** The same with chances to hang open and to stay shut. */
  public SpeedBehaviour withChances(double hang, double shut) {
    return new SpeedBehaviour(
        offsetStops, scatterStops, creepStops, afterRestStops, hang, shut, peak);
  }

  /** The same with blades that stop at a fraction of full light. */
  public SpeedBehaviour withPeak(double fraction) {
    return new SpeedBehaviour(
        offsetStops, scatterStops, creepStops, afterRestStops, hangChance, shutChance, fraction);
  }
}
