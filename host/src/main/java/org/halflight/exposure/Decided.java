package org.halflight.exposure;

import java.util.OptionalDouble;

/**
 * What edges and light curve of one firing come to together. Never a mean of the two.
 *
 * @param by what decides
 * @param effectiveSeconds the effective time, all its light in it; empty where nothing decides
 * @param methodSeconds what the way itself may be off by, plus or minus: of the edges the error of
 *     the two-level rule, or what its correction leaves of it; of the curve what the converter
 *     leaves open
 * @param apartSeconds the greatest difference between the widths that edges and curve have at one
 *     level, as a size; empty where no level was seen by both
 */
public record Decided(
    DecidedBy by,
    OptionalDouble effectiveSeconds,
    double methodSeconds,
    OptionalDouble apartSeconds) {
  public Decided {
    if (by.givesTime() != effectiveSeconds.isPresent()) {
      throw new IllegalArgumentException("a time belongs to what decides one: " + by);
    }
  }

  /**
   * The same where the edges are those of the light curve itself. Where its ramps are long enough
   * to tell the error of the rule, its plateau counts as full light, whatever the lamp does
   * meanwhile.
   */
  public Decided byCurve(CurveExposure.Measured curve) {
    return by == DecidedBy.EDGES || by == DecidedBy.EDGES_CORRECTED
        ? new Decided(
            DecidedBy.CURVE,
            by == DecidedBy.EDGES_CORRECTED
                ? effectiveSeconds
                : OptionalDouble.of(curve.effectiveSeconds()),
            curve.toleranceSeconds(),
            apartSeconds)
        : this;
  }
}
