package org.halflight.firstlight;

import org.halflight.rig.ReferenceDrive;
import org.halflight.signal.Channel;

/** A figure that a step has seen. Light is in counts of the ten-bit converter. */
public sealed interface Seen {
  /** What the rig says of itself. */
  record Greeted(String kind, String firmware, long starts) implements Seen {}

  /** The supply, as a voltmeter showed it. */
  record Supply(double volts) implements Seen {}

  /** The light of a sensor, between these. */
  record Light(Channel sensor, double leastCounts, double mostCounts) implements Seen {}

  /** Changes of an input. */
  record Changes(Channel input, int on, int off) implements Seen {}

  /** A threshold as it was set, and as it came back; the low one goes by the low channel. */
  record ReadBack(Channel level, double setCounts, double readCounts) implements Seen {}

  /** The reference inside the chip, as read against the supply. */
  record Reference(double volts) implements Seen {}

  /** The light of the centre without the reference LED, and with it. */
  record Led(double darkCounts, double litCounts) implements Seen {}

  /** Pulses of the reference LED, and how many of them the centre's low level saw. */
  record Pulses(ReferenceDrive drive, int made, int seen) implements Seen {}

  /** The light that was set. */
  record LightSet(double darkCounts, double fullCounts) implements Seen {}

  /** The exposure of a firing. */
  record Fired(double seconds) implements Seen {}

  /** What was written or kept, by its name. */
  record Kept(String name) implements Seen {}
}
