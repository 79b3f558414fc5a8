package org.halflight.exposure;

/**
 * When the light of the main opening crossed the two levels, in ticks.
 *
 * @param lowRiseTicks first rise through the low level
 * @param highRiseTicks first rise through the high level
 * @param highFallTicks last fall through the high level
 * @param lowFallTicks last fall through the low level
 */
public record Crossings(
    long lowRiseTicks, long highRiseTicks, long highFallTicks, long lowFallTicks) {}
