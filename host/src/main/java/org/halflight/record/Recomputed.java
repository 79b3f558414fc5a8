package org.halflight.record;

/**
 * What working out again came to.
 *
 * @param firings how many were worked out again
 * @param changed how many came to something else than before
 * @param methodVersion the version of the method that all of them now have
 */
public record Recomputed(int firings, int changed, int methodVersion) {}
