package org.halflight.exposure;

/**
 * How the blades of a shutter in or near the lens moved in the main opening, in seconds.
 *
 * @param halfWidthSeconds estimate of the time above half light
 * @param fullyOpenSeconds estimate of the time fully open; below 0 where the law says never
 * @param openingSeconds from first light to fully open
 * @param closingSeconds from start of closing to dark
 * @param totalSeconds from first to last light
 * @param efficiency effective time of the main opening over total time
 */
public record BladeTravel(
    ByLaw halfWidthSeconds,
    ByLaw fullyOpenSeconds,
    ByLaw openingSeconds,
    ByLaw closingSeconds,
    ByLaw totalSeconds,
    ByLaw efficiency)
    implements Travel {
  /** The stop table that these blades predict. */
  public StopTable stopTable() {
    return new StopTable(totalSeconds, ByLaw.of(this::openingPlusClosingSeconds));
  }
}
