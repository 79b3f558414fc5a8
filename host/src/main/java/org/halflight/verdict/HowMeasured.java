package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.DecidedBy;
import org.halflight.exposure.Exposure;
import org.halflight.session.FiringResult;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.CurveBudget;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.UncertaintyBudget;

/**
 * How the times of one speed were measured, and so how far they may be off.
 *
 * @param travel of the blades, where it was seen
 * @param decisionBasis what is known of the rig, and how it is decided
 * @param rebound the light part by part, and whether anybody looked for a rebound
 * @param timingBasis what the times are by
 */
public record HowMeasured(
    Optional<RampTravel> travel,
    DecisionBasis decisionBasis,
    ReboundAtSpeed rebound,
    TimingBasis timingBasis) {
  /** Errors of a model, with no rig in between that could be off. */
  public static final HowMeasured BY_A_MODEL =
      new HowMeasured(Optional.empty(), DecisionBasis.OF_A_MODEL);

  /** Without rebound, and times that no light curve had a say in. */
  public HowMeasured(Optional<RampTravel> travel, DecisionBasis decisionBasis) {
    this(travel, decisionBasis, ReboundAtSpeed.OF_A_MODEL, TimingBasis.EDGES_ALONE);
  }

  /** The travel where blades opened fully, with the doubt of the way that decides. */
  static Optional<RampTravel> travel(List<FiringResult> good) {
    List<FiringResult> byEdges =
        good.stream()
            .filter(f -> f.decidedBy().filter(by -> by != DecidedBy.CURVE).isPresent())
            .toList();
    return RampTravel.of(byEdges.stream().map(f -> (Exposure.Timed) f.exposure()).toList())
        .map(
            travel ->
                travel.withMethod(
                    Math.max(
                        0,
                        byEdges.stream()
                            .mapToDouble(f -> f.methodSeconds().orElseThrow())
                            .average()
                            .orElseThrow()),
                    byEdges.stream()
                        .allMatch(
                            f -> f.decidedBy().equals(Optional.of(DecidedBy.EDGES_CORRECTED)))));
  }

  /**
   * All that the mean of a sample is uncertain by; empty below two timed firings.
   *
   * @param errors in stops
   * @param referenceSeconds what they are errors from
   */
  Optional<UncertaintyBudget> budget(Sample errors, double referenceSeconds) {
    if (errors.n() < Sample.LEAST_FOR_SCATTER) {
      return Optional.empty();
    }
    double mean = referenceSeconds * Math.pow(2, errors.mean().known().orElseThrow());
    double scatter = errors.sd().known().orElseThrow();
    int n = errors.n();
    UncertaintyBudget byEdges =
        UncertaintyBudget.of(mean, travel.orElse(RampTravel.NONE), decisionBasis.rig(), scatter, n);
    if (timingBasis.curve().isEmpty()) {
      return Optional.of(byEdges);
    }
    UncertaintyBudget byCurve =
        CurveBudget.of(
            mean,
            timingBasis.curve().get(),
            decisionBasis.rig(),
            scatter,
            n,
            rebound.boundSeconds());
    // Where some firings are by edges and some by their curve, the wider of the two holds.
    boolean curveHolds =
        timingBasis.isByCurveAlone()
            || byCurve.expandedSeconds(SpeedSummary.LEVEL)
                >= byEdges.expandedSeconds(SpeedSummary.LEVEL);
    return Optional.of(curveHolds ? byCurve : byEdges);
  }
}
