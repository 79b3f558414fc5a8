package org.halflight.session;

/**
 * Readings of a screw plunger in a run.
 *
 * @param run counts the runs of the session from 1
 */
public record PlungerAt(int run, PlungerReading reading) {}
