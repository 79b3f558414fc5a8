package org.halflight.shuttermodel;

/** Lamps for the practice rig. All of it is invented. */
public enum InventedLamp {
  /** A good lamp with a trace of ripple. */
  GOOD(new Lamp(-0.004, 600, 100, 0.001)),
  /** A lamp on the mains. */
  FLICKERING(new Lamp(-0.004, 600, 100, 0.15)),
  /** A lamp that wanders, as with a loose contact. */
  WANDERING(new Lamp(0, 1, 1.7, 0.03));

  @SuppressWarnings("ImmutableEnumChecker") // Lamp is a record of numbers.
  private final Lamp lamp;

  InventedLamp(Lamp lamp) {
    this.lamp = lamp;
  }

  /** The lamp itself. */
  public Lamp lamp() {
    return lamp;
  }
}
