package org.halflight.exposure;

/**
 * The exposure by edges held against that by the light curve of the same firing.
 *
 * @param edgesSeconds effective time by edges
 * @param curveSeconds effective time by the curve
 * @param toleranceSeconds how far they may lie apart by what is known of both ways: the rule of two
 *     levels, levels known to {@value #LEVELS_KNOWN_TO} of full light, and the converter
 */
public record CurveAgreement(double edgesSeconds, double curveSeconds, double toleranceSeconds) {
  /** How well the levels are known as parts of full light; see docs/method.md. */
  public static final double LEVELS_KNOWN_TO = 0.01;

  /** Holds one firing's edges against its curve. */
  public static CurveAgreement of(LeafExposure.Timed edges, CurveExposure.Measured curve) {
    double ramps = edges.openingPlusClosingSeconds(OpeningLaw.RADIUS_LINEAR);
    return new CurveAgreement(
        edges.effectiveSeconds(),
        curve.effectiveSeconds(),
        edges.methodSeconds() + LEVELS_KNOWN_TO * ramps + curve.toleranceSeconds());
  }

  /** Edges less curve, in seconds. */
  public double differenceSeconds() {
    return edgesSeconds - curveSeconds;
  }

  /** Whether they lie further apart than the tolerance. */
  public boolean disagrees() {
    return Math.abs(differenceSeconds()) > toleranceSeconds;
  }
}
