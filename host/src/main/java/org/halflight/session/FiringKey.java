package org.halflight.session;

/**
 * What a firing is known by, wherever its raw edges turn up again: no two firings have the same
 * key, and a session file that is taken in twice brings the same keys.
 *
 * @param rigSerial serial number of the rig
 * @param bootCount how often the board had started
 * @param firstTicks ticks of the first edge
 */
public record FiringKey(String rigSerial, long bootCount, long firstTicks) {}
