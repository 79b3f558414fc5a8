package org.halflight.exposure;

import java.util.EnumSet;
import java.util.Set;
import org.halflight.exposure.LeafExposure.Flag;

/**
 * The exposure by edges held against that by the light curve of the same firing.
 *
 * @param edgesSeconds effective time of the main opening by edges
 * @param curveSeconds the same by the curve
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
        edges.mainSeconds(),
        curve.effectiveSeconds(),
        edges.methodSeconds() + LEVELS_KNOWN_TO * ramps + curve.toleranceSeconds());
  }

  /**
   * The exposure by edges with what the curve of the same firing has to say about it: the time of
   * leaves that never open fully; whether it disagrees; whether the light became full, which two
   * levels cannot always tell. The figures by edges stay as they are.
   */
  public static LeafExposure remarked(LeafExposure edges, CurveExposure curve) {
    if (!(curve instanceof CurveExposure.Measured measured)) {
      return edges;
    }
    if (edges instanceof LeafExposure.NeverFullyOpen never) {
      return never.withEffective(measured.effectiveSeconds());
    }
    if (!(edges instanceof LeafExposure.Timed timed)) {
      return edges;
    }
    Set<Flag> flags = EnumSet.noneOf(Flag.class);
    flags.addAll(timed.flags());
    if (of(timed, measured).disagrees()) {
      flags.add(Flag.CURVE_DISAGREES);
    }
    if (measured.openedFully()) {
      flags.remove(Flag.MAY_NOT_OPEN_FULLY);
    } else {
      flags.add(Flag.CURVE_BELOW_FULL);
    }
    return timed.withFlags(flags);
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
