package org.halflight.record;

import java.util.Optional;
import org.halflight.job.Id;
import org.halflight.job.Run;
import org.halflight.session.FiringResult;

/**
 * A firing as the record holds it.
 *
 * @param result the firing with its raw edges and what was worked out from them
 * @param methodVersion version of the method that worked it out
 * @param run the run that it belongs to; empty when it was fired before a run was begun, and where
 *     the record does not hold that run
 * @param cutOff whether its session broke off before its quiet time had passed, so that the last
 *     edges may be missing
 */
public record KeptFiring(
    FiringResult result, int methodVersion, Optional<Id<Run>> run, boolean cutOff) {}
