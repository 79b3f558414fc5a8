package org.halflight.session;

/**
 * An adjustment that the person has made.
 *
 * @param run the run in whose course it was done; 0 before one was begun
 * @param afterFiring number of the last firing before it; 0 for none
 * @param words what was done
 */
public record AdjustedAt(int run, int afterFiring, String words) {}
