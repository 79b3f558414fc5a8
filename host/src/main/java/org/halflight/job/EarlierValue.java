package org.halflight.job;

import java.time.Instant;

/**
 * What a field said before somebody corrected it.
 *
 * @param name of the field, as the record calls it
 * @param words what it said; not empty
 * @param replacedAt when it was corrected
 */
public record EarlierValue(String name, String words, Instant replacedAt) {}
