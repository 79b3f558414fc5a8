package org.halflight.signal;

/**
 * One change of one input.
 *
 * @param channel which input
 * @param high the level after the change: light, closed, sound or pressed
 * @param ticks when, in ticks of the board, widened to 64 bits
 */
public record Edge(Channel channel, boolean high, long ticks) {}
