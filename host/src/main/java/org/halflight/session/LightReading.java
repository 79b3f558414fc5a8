package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LightLevels;
import org.halflight.stored.StoredWords;

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
 * @param darkCounts dark level as it was set with the light; empty where it was not
 * @param fullCounts full-open light, likewise
 * @param rigSerial serial number of the rig
 * @param bootCount start of its board
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
    OptionalDouble darkCounts,
    OptionalDouble fullCounts,
    String rigSerial,
    long bootCount,
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
    STOP,
    /** The shutter held open, the panel of light in front of the lens as for firing. */
    PANEL_IN_PLACE,
    /** The same with the panel moved sideways by a radius of the pupil. */
    PANEL_MOVED,
    /** The shutter held open as for setting the light: whether full light is still what it was. */
    FULL;

    /** As files store them. */
    public static final StoredWords<What> WORDS =
        StoredWords.of(
            What.class,
            what ->
                switch (what) {
                  case LAMP_COVERED -> "lamp-covered";
                  case SHUT_COCKED -> "shut-cocked";
                  case SHUT_UNCOCKED -> "shut-uncocked";
                  case STOP -> "stop";
                  case PANEL_IN_PLACE -> "panel-in-place";
                  case PANEL_MOVED -> "panel-moved";
                  case FULL -> "full-light";
                });
  }

  public LightReading {
    if (!(counts >= 0) || !(standardUncertaintyCounts >= 0) || blocks < 1) {
      throw new IllegalArgumentException("not a reading of light: " + counts);
    }
  }

  /** What was read, before it is known which run, rig and light it belongs to. */
  public static LightReading of(
      What what,
      String at,
      boolean opening,
      double counts,
      double standardUncertaintyCounts,
      int blocks,
      long ticks) {
    return new LightReading(
        0,
        Optional.empty(),
        what,
        at,
        opening,
        counts,
        standardUncertaintyCounts,
        blocks,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "",
        0,
        ticks);
  }

  /** The same reading as one of a run, by a rig, under a light. */
  LightReading in(
      int itsRun, Optional<Phase> itsPhase, Optional<LightLevels> light, String serial, long boot) {
    return new LightReading(
        itsRun,
        itsPhase,
        what,
        at,
        opening,
        counts,
        standardUncertaintyCounts,
        blocks,
        light.isPresent() ? OptionalDouble.of(light.get().darkCounts()) : OptionalDouble.empty(),
        light.isPresent() ? OptionalDouble.of(light.get().fullCounts()) : OptionalDouble.empty(),
        serial,
        boot,
        ticks);
  }
}
