package org.halflight.job;

import java.time.Instant;

/**
 * What stood in a field before it was corrected.
 *
 * @param field the column of the record
 * @param earlier what stood in it
 * @param at when it was corrected
 */
public record Correction(String field, String earlier, Instant at) {}
