package org.halflight.calibration;

/**
 * What the clock of the host is worth as a measure.
 *
 * @param steered whether a time service holds it to true time
 * @param stampsFollow whether the clock that pings are stamped with is the one that is steered: on
 *     Linux it is; on Windows and macOS it is the bare quartz, whatever the time of day does (both
 *     from memory)
 */
public record HostClock(Steered steered, boolean stampsFollow) {
  /** Nobody asked, or the system does not tell. */
  public static final HostClock NOT_KNOWN = new HostClock(Steered.NOT_KNOWN, false);

  /** A computer's quartz, to either side, evenly spread (from memory: sold as 20 to 50 ppm). */
  public static final double QUARTZ_PPM = 50;

  /**
   * A steered clock is right in the long run, and is sped up or slowed down by up to some tens of
   * ppm meanwhile (from memory), to either side, evenly spread.
   */
  public static final double STEERED_PPM = 20;

  /** Whether a time service steers a clock. */
  public enum Steered {
    YES,
    NO,
    /** The system does not tell, or there was no way to ask. */
    NOT_KNOWN
  }

  /** Standard uncertainty of its rate in ppm. */
  public double standardUncertaintyPpm() {
    boolean better = steered == Steered.YES && stampsFollow;
    return (better ? STEERED_PPM : QUARTZ_PPM) / Math.sqrt(3);
  }
}
