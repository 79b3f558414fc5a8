package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.List;

/**
 * How a sound rings in a piezo and comes out of its comparator: it decays exponentially from twenty
 * times the threshold, and in each period the output is high while the swing is above it. So pulses
 * get narrower and the gaps between them wider. The shape is that of a damped oscillator; the
 * figures are invented.
 *
 * @param hertz of the piezo
 * @param seconds until the swing no longer passes the threshold
 */
public record Ringing(double hertz, double seconds) {
  /** Invented: a disc on a camera's body. */
  public static final Ringing INVENTED = new Ringing(4000, 0.003);

  /** The decay begins this many time constants above the threshold: a ratio of twenty. */
  private static final double DECAYS = 3;

  /** Shorter than this a comparator does not pass, in seconds. */
  private static final double LEAST_SECONDS = 4e-6;

  /**
   * One pulse.
   *
   * @param fromSeconds since the onset, which is the beginning of the first one
   * @param toSeconds likewise
   */
  public record Pulse(double fromSeconds, double toSeconds) {}

  public Ringing {
    if (!(hertz > 0) || !(seconds * hertz >= 1)) {
      throw new IllegalArgumentException("rings for a period at least: " + hertz + ", " + seconds);
    }
  }

  /** The pulses in order. */
  public List<Pulse> pulses() {
    List<Pulse> pulses = new ArrayList<>();
    double first = passes(0);
    for (int period = 0; ; period++) {
      double passes = passes(period);
      double from = period / hertz + passes - first;
      double to = (period + 0.5) / hertz - passes - first;
      if (to - from < LEAST_SECONDS) {
        return pulses;
      }
      pulses.add(new Pulse(from, to));
    }
  }

  /** From the start of a period until its swing passes the threshold, in seconds. */
  private double passes(int period) {
    double height = StrictMath.exp(DECAYS * (1 - (period + 0.25) / hertz / seconds));
    return height > 1 ? StrictMath.asin(1 / height) / (2 * Math.PI * hertz) : 0.25 / hertz;
  }
}
