package org.halflight.shuttermodel;

/**
 * Where the voltage of a sensor passes a threshold.
 *
 * @param seconds when, on the clock of the light path
 * @param rising whether the voltage is above the threshold afterwards
 * @param millivoltsPerSecond slope of the voltage there; infinite at a step
 */
public record Crossing(double seconds, boolean rising, double millivoltsPerSecond) {}
