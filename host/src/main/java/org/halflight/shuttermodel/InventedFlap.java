package org.halflight.shuttermodel;

import java.util.Optional;

/**
 * Flaps of invented bodies with reflex viewing: when the release is pressed the blades close, the
 * flap lifts, and then the shutter fires. Nobody measured such a body; all times are invented.
 */
public enum InventedFlap {
  /** No reflex viewing, so no flap. */
  NONE(0, false),
  /** Tight until it is out of the way. */
  TIGHT(0.07, false),
  /** Lifts before the blades are shut: a good third of the light for 12 ms. */
  LEAKING(0.07, true);

  /** From the beginning of its leak to first light of the exposure. */
  private static final double LEAK_AHEAD_SECONDS = 0.045;

  private final double liftSeconds;
  private final boolean leaks;

  InventedFlap(double liftSeconds, boolean leaks) {
    this.liftSeconds = liftSeconds;
    this.leaks = leaks;
  }

  /** By how much it delays first light, in seconds. */
  public double liftSeconds() {
    return liftSeconds;
  }

  /** The light that it lets through, from the time on that {@link #leakAheadSeconds} says. */
  public Optional<LightPath> leak() {
    return leaks
        ? Optional.of(
            new LightPath(new double[] {0, 1e-3, 11e-3, 12e-3}, new double[] {0, 0.38, 0.38, 0}))
        : Optional.empty();
  }

  /** From the beginning of its leak to first light of the exposure, in seconds. */
  public double leakAheadSeconds() {
    return LEAK_AHEAD_SECONDS;
  }
}
