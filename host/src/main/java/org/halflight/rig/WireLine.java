package org.halflight.rig;

/**
 * A line that went over the wire.
 *
 * @param hostNanos when, by the host's clock that never runs back
 * @param toRig whether the host sent it
 * @param line without line end, damaged or not
 */
public record WireLine(long hostNanos, boolean toRig, String line) {}
