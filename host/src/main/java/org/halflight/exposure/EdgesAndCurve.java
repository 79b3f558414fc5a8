package org.halflight.exposure;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.exposure.Exposure.NeverFullyOpen;
import org.halflight.exposure.Exposure.Timed;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * The edges and the light curve of one firing: two questions, kept apart.
 *
 * <p><b>Do they see the same light?</b> Widths at the same level are compared, never integrals: at
 * slow speeds the lamp's wander hides half a millisecond of an integral, while a width hangs on the
 * ramps alone. They do not where one lies apart by more than {@link #LEAST_APART_SECONDS} and by
 * more than {@link #APART_SHARE} of opening plus closing time, both: what the levels and the
 * converter may be out by grows with the ramps, and noise and sampling leave some microseconds even
 * where the ramps are short.
 *
 * <p><b>Does the two-level rule hold?</b> Where the light opened fully, the edges decide, less the
 * error of the rule on the ramps that were sampled. Where it dwelt or stayed below full light, the
 * curve decides, if full light is known to have been full; and nothing does until then. The two are
 * never averaged.
 *
 * @param edges what the edges came to
 * @param ownLevel the level that a rig of one level saw; empty where both were seen
 * @param levels in force, as parts of full light
 * @param sampled the curve
 * @param light that was set
 * @param curve what the curve came to under that light
 * @param rate how fast the board counts
 */
public record EdgesAndCurve(
    Exposure edges,
    Optional<AlternatingLevels.Level> ownLevel,
    LevelPair levels,
    SampledLight sampled,
    LightLevels light,
    Measured curve,
    TickRate rate) {
  /** Widths this near to each other are of one light, however short the ramps. */
  public static final double LEAST_APART_SECONDS = 50e-6;

  /** Widths this near to each other, as a part of opening plus closing time, likewise. */
  public static final double APART_SHARE = 0.02;

  /**
   * The greatest error of the rule, as a part of the difference of the two widths, of ramps that
   * rise without a stop: 4 % at the nodes, 7.4 % with levels 0.03 beside them. Beyond it the blades
   * stuck on their way, and nothing bounds the rule.
   */
  static final double RULE_HOLDS_SHARE = 0.08;

  /**
   * What the correction leaves of the rule's error, as a part of the difference of the two widths:
   * the bound of 0.6 % over all laws that were tried, with room for the levels of eight-bit
   * readings.
   */
  static final double CORRECTED_SHARE = 0.01;

  /**
   * Ramps with fewer readings between the two levels are too short to be corrected by them, and
   * have hardly any error.
   */
  private static final int LEAST_READINGS = 8;

  /** The high level is compared where the light rose above it by this part of full light. */
  private static final double CLEARLY_ABOVE = 0.05;

  /** Whether a share of the full light that was set, measured later, is still full light. */
  public static boolean isFull(double share) {
    return Math.abs(share - 1) <= CurveMethod.LIGHT_DOUBT;
  }

  /**
   * What decides.
   *
   * @param fullLightAfter full light measured after the firing, as a share of the one that was set;
   *     empty where it was not
   * @return empty where the edges gave neither a time nor bounds of one
   */
  public Optional<Decided> decided(OptionalDouble fullLightAfter) {
    if (!(edges instanceof Timed) && !(edges instanceof NeverFullyOpen)) {
      return Optional.empty();
    }
    CurveShape shape = CurveMethod.shape(sampled, light, rate, curve, levels);
    OptionalDouble apart = apartSeconds(shape);
    if (apart.isPresent() && apart.getAsDouble() > allowedSeconds(shape)) {
      return Optional.of(new Decided(DecidedBy.CHECK_RIG, OptionalDouble.empty(), 0, apart));
    }
    if (curve.openedFully() && edges instanceof Timed timed && holds(shape)) {
      boolean corrects =
          shape.ruleErrorSeconds().isPresent()
              && shape.gapSeconds() >= LEAST_READINGS * readingSeconds()
              && shape.coarseSeconds() <= CORRECTED_SHARE * shape.gapSeconds();
      return Optional.of(
          corrects
              ? new Decided(
                  DecidedBy.EDGES_CORRECTED,
                  OptionalDouble.of(corrected(timed, shape)),
                  CORRECTED_SHARE * shape.gapSeconds() + shape.coarseSeconds(),
                  apart)
              : new Decided(
                  DecidedBy.EDGES,
                  OptionalDouble.of(timed.effectiveSeconds()),
                  timed.methodSeconds(),
                  apart));
    }
    boolean lightIsKnown =
        curve.openedFully() || (fullLightAfter.isPresent() && isFull(fullLightAfter.getAsDouble()));
    return Optional.of(
        lightIsKnown
            ? new Decided(
                DecidedBy.CURVE,
                OptionalDouble.of(curve.effectiveSeconds()),
                curve.toleranceSeconds(),
                apart)
            : new Decided(DecidedBy.FULL_LIGHT_AGAIN, OptionalDouble.empty(), 0, apart));
  }

  /**
   * The exposure by edges with what the curve has to say about it: the time of blades that never
   * open fully; whether the widths lie apart; whether the light became full, which two levels
   * cannot always tell. The figures by edges stay as they are.
   */
  public Exposure remarked(Optional<Decided> decided) {
    if (edges instanceof NeverFullyOpen never) {
      return never.withEffective(curve.effectiveSeconds());
    }
    if (!(edges instanceof Timed timed)) {
      return edges;
    }
    Set<Flag> flags = EnumSet.noneOf(Flag.class);
    flags.addAll(timed.flags());
    flags.remove(Flag.WIDTHS_APART);
    if (decided.filter(each -> each.by() == DecidedBy.CHECK_RIG).isPresent()) {
      flags.add(Flag.WIDTHS_APART);
    }
    if (curve.openedFully()) {
      flags.remove(Flag.MAY_NOT_OPEN_FULLY);
    } else {
      flags.add(Flag.CURVE_BELOW_FULL);
    }
    return timed.withFlags(flags);
  }

  /** The time by the rule, less the rule's error on the main opening. */
  private static double corrected(Timed timed, CurveShape shape) {
    return timed.effectiveSeconds() - shape.ruleErrorSeconds().getAsDouble();
  }

  /** Whether blades that opened fully did so without sticking, and stayed so. */
  private static boolean holds(CurveShape shape) {
    double error = Math.abs(shape.ruleErrorSeconds().orElse(0));
    return !shape.dips() && error <= RULE_HOLDS_SHARE * shape.gapSeconds() + shape.coarseSeconds();
  }

  private double readingSeconds() {
    return rate.seconds(sampled.parts().get(0).periodTicks());
  }

  private OptionalDouble apartSeconds(CurveShape shape) {
    OptionalDouble low = apart(AlternatingLevels.Level.LOW, lowWidthSeconds(), shape.lowSeconds());
    OptionalDouble high =
        curve.peak() > levels.high() + CLEARLY_ABOVE
            ? apart(AlternatingLevels.Level.HIGH, highWidthSeconds(), shape.highSeconds())
            : OptionalDouble.empty();
    return low.isPresent() && high.isPresent()
        ? OptionalDouble.of(Math.max(low.getAsDouble(), high.getAsDouble()))
        : low.isPresent() ? low : high;
  }

  private OptionalDouble apart(
      AlternatingLevels.Level level, double byEdges, OptionalDouble byCurve) {
    boolean seen = ownLevel.isEmpty() || ownLevel.get() == level;
    return seen && byCurve.isPresent()
        ? OptionalDouble.of(Math.abs(byEdges - byCurve.getAsDouble()))
        : OptionalDouble.empty();
  }

  private double lowWidthSeconds() {
    return edges instanceof Timed timed
        ? timed.widthLowSeconds()
        : ((NeverFullyOpen) edges).widthLowSeconds();
  }

  private double highWidthSeconds() {
    return edges instanceof Timed timed
        ? timed.widthHighSeconds()
        : ((NeverFullyOpen) edges).widthHighSeconds();
  }

  private double allowedSeconds(CurveShape shape) {
    return Math.max(LEAST_APART_SECONDS, APART_SHARE * rampSeconds(shape));
  }

  /**
   * Opening plus closing time as the curve has it: as if the area grew evenly, or by the law of its
   * ramps where that is longer. A width fault of the edges must not stretch its own allowance.
   */
  private double rampSeconds(CurveShape shape) {
    double byLaw =
        curve.opening().isPresent() && curve.closing().isPresent()
            ? curve.opening().get().seconds() + curve.closing().get().seconds()
            : 0;
    if (shape.highSeconds().orElse(0) > 0) {
      return Math.max(byLaw, shape.gapSeconds() / (levels.high() - levels.low()));
    }
    return shape.lowSeconds().isPresent()
        ? Math.max(
            byLaw,
            Math.max(0, curve.totalSeconds() - shape.lowSeconds().getAsDouble()) / levels.low())
        : byLaw;
  }
}
