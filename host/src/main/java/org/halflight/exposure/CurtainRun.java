package org.halflight.exposure;

/**
 * One curtain over the frame.
 *
 * @param outerSeconds from one outer sensor to the other
 * @param edgeSeconds from edge to edge of the frame, by an accelerating curve through the three
 *     places: exact through three points, and untested
 * @param plusMinusSeconds of the time from edge to edge, which it is within 19 times in 20
 * @param firstHalfMetresPerSecond mean speed from start to centre
 * @param lastHalfMetresPerSecond mean speed from centre to end
 */
public record CurtainRun(
    double outerSeconds,
    double edgeSeconds,
    double plusMinusSeconds,
    double firstHalfMetresPerSecond,
    double lastHalfMetresPerSecond) {}
