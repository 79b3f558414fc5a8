package org.halflight.record;

/**
 * What a rig said of itself at one start of its board.
 *
 * @param rigSerial serial number of the rig
 * @param bootCount how often the board had started
 * @param rigKind {@code full} or {@code small}
 * @param channelsMask mask of the channels that exist
 * @param ticksPerSecond how fast it counts
 * @param firmware version of its program
 * @param protocol version of the line protocol
 * @param resetCause why it started
 */
public record RigStart(
    String rigSerial,
    long bootCount,
    String rigKind,
    int channelsMask,
    long ticksPerSecond,
    String firmware,
    int protocol,
    String resetCause) {}
