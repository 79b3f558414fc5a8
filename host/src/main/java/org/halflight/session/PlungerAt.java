package org.halflight.session;

import java.util.Optional;

/**
 * Readings of a screw plunger in a run.
 *
 * @param run counts the runs of the session from 1; 0 before one was begun
 * @param phase of the run; empty before one was begun
 */
public record PlungerAt(int run, Optional<Phase> phase, PlungerReading reading) {}
