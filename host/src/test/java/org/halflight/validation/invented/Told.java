package org.halflight.validation.invented;

import java.util.List;

/** What a rig tells, in plain numbers. */
public sealed interface Told {
  /** The tick that it is told by. */
  long ticks();

  /**
   * An edge.
   *
   * @param channel 0 low level, 1 high level of the centre sensor
   * @param light whether there is light after it
   */
  record Edge(int channel, boolean light, long ticks) implements Told {}

  /**
   * A beat.
   *
   * @param levels the mask of channels that see light
   * @param sum16 the light of the last full millisecond
   */
  record Beat(long ticks, int levels, int sum16) implements Told {}

  /** A light curve; it is told when it is dark again. */
  record Curve(long ticks, List<Part> parts) implements Told {
    public Curve {
      parts = List.copyOf(parts);
    }
  }

  /** The light is set anew, and found as it was. */
  record LightAgain(long ticks) implements Told {}

  /**
   * A part of a light curve.
   *
   * @param kind 0 opening window, 1 plateau, 2 closing window
   * @param firstTicks of its first value
   * @param periodTicks from one value to the next
   * @param values eight-bit readings, on the plateau sums of 16 ten-bit readings
   */
  record Part(int kind, long firstTicks, long periodTicks, List<Integer> values) {
    public Part {
      values = List.copyOf(values);
    }
  }
}
