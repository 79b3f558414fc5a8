package org.halflight.session;

import java.util.Objects;
import java.util.Optional;

/**
 * Light of the centre sensor over a while in which nothing moved.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run; empty before a run was begun
 * @param what stood how
 * @param at the f-number at which the stop stood, as engraved; empty where it does not matter
 * @param opening whether the stop was turned towards the wider ones to get there
 * @param counts mean of the ten-bit converter's readings
 * @param standardUncertaintyCounts of that mean
 * @param blocks milliseconds of light that it is the mean of
 * @param ticks of the board at its end
 */
public record LightReading(
    int run,
    Optional<Phase> phase,
    What what,
    String at,
    boolean opening,
    double counts,
    double standardUncertaintyCounts,
    int blocks,
    long ticks) {
  /** What the light was read of. */
  public enum What {
    /** The lamp off or its light kept out in front of the lens: what the sensor says by itself. */
    LAMP_COVERED,
    /** The lamp on, the shutter shut and cocked. */
    SHUT_COCKED,
    /** The lamp on, the shutter shut and not cocked. */
    SHUT_UNCOCKED,
    /** The shutter held open at a stop. */
    STOP
  }

  public LightReading {
    Objects.requireNonNull(phase);
    Objects.requireNonNull(what);
    Objects.requireNonNull(at);
    if (!(counts >= 0) || !(standardUncertaintyCounts >= 0) || blocks < 1) {
      throw new IllegalArgumentException("not a reading of light: " + counts);
    }
  }
}
