package org.halflight.verdict;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.DecidedBy;
import org.halflight.session.FiringCurve;
import org.halflight.session.FiringResult;
import org.halflight.session.OneLevel;
import org.halflight.uncertainty.CurveUncertainty;

/**
 * What the times of one speed are by, and what stands in the way of a verdict.
 *
 * @param firings how many of those that count are decided by what
 * @param curve what light curves leave to doubt; empty where none decides
 */
public record TimingBasis(Map<DecidedBy, Integer> firings, Optional<CurveUncertainty> curve) {
  /** No firing had a light curve, or was none of a rig. */
  public static final TimingBasis EDGES_ALONE = new TimingBasis(Map.of(), Optional.empty());

  public TimingBasis {
    firings = Map.copyOf(firings);
  }

  /** Of the firings of one speed. */
  static TimingBasis of(List<FiringResult> all) {
    List<FiringResult> counted = all.stream().filter(FiringResult::answersTheQuestion).toList();
    Map<DecidedBy, Integer> firings = new EnumMap<>(DecidedBy.class);
    counted.forEach(
        firing -> firing.decidedBy().ifPresent(by -> firings.merge(by, 1, Integer::sum)));
    List<FiringCurve> curves =
        counted.stream()
            .filter(firing -> firing.decidedBy().equals(Optional.of(DecidedBy.CURVE)))
            .flatMap(firing -> firing.curve().stream())
            .toList();
    return new TimingBasis(
        firings,
        curves.isEmpty() ? Optional.empty() : Optional.of(doubt(curves, followsSupply(counted))));
  }

  /** A fixed level is read beside each firing, and each shows full light again. */
  private static boolean followsSupply(List<FiringResult> counted) {
    return counted.stream()
        .allMatch(
            firing ->
                firing.oneLevel().filter(OneLevel::isFixed).isPresent()
                    && firing
                        .curveExposure()
                        .flatMap(CurveExposure::measured)
                        .filter(Measured::openedFully)
                        .isPresent());
  }

  /**
   * Where the supply is followed, what is left in full light is the lamp alone: its error of the
   * mean of the times is the mean of what the firings showed. Else the greatest of it counts.
   */
  private static CurveUncertainty doubt(List<FiringCurve> curves, boolean followsSupply) {
    List<Measured> measured =
        curves.stream()
            .flatMap(curve -> curve.exposure().flatMap(CurveExposure::measured).stream())
            .toList();
    DoubleStream off = curves.stream().mapToDouble(curve -> fullLight(curve) - 1);
    return followsSupply
        ? CurveUncertainty.of(measured, Math.abs(off.average().orElseThrow())).withSupplyFollowed()
        : CurveUncertainty.of(measured, off.map(Math::abs).max().orElseThrow());
  }

  /** Full light as it was measured again, as a share of the one that was set. */
  private static double fullLight(FiringCurve curve) {
    return curve
        .fullLightAfter()
        .orElseGet(() -> curve.exposure().flatMap(CurveExposure::measured).orElseThrow().peak());
  }

  /** How many firings are decided by something. */
  public int count(DecidedBy by) {
    return firings.getOrDefault(by, 0);
  }

  /** What decides them, each once. */
  public List<DecidedBy> kinds() {
    return firings.keySet().stream().sorted().toList();
  }

  /** Whether light curves alone decide. */
  boolean isByCurveAlone() {
    return curve.isPresent()
        && count(DecidedBy.EDGES) == 0
        && count(DecidedBy.EDGES_CORRECTED) == 0;
  }

  /** What keeps the speed from a verdict, whatever its other firings come to. */
  public Optional<Verdict> instead() {
    if (count(DecidedBy.CHECK_RIG) > 0) {
      return Optional.of(Verdict.CHECK_RIG);
    }
    return count(DecidedBy.FULL_LIGHT_AGAIN) > 0
        ? Optional.of(Verdict.FULL_LIGHT_AGAIN)
        : Optional.empty();
  }
}
