package org.halflight.uncertainty;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.OpeningLaw;

/**
 * What the ramps of a speed take, opening and closing: the errors of light act during that time
 * only.
 *
 * @param rampSeconds opening plus closing time
 * @param unlikeSeconds how far closing and opening time differ, as a size
 * @param methodSeconds bound of the error of the rule of two levels
 * @param isCorrected whether a light curve corrected that error, and the bound is of what that
 *     leaves: it differs from firing to firing and is no bias
 * @param roundRampSeconds opening plus closing time for round holes whose radius grows evenly, on
 *     which light over the pupil acts
 * @param outsideBoundSeconds how far off the light outside the main opening may be, plus or minus
 */
public record RampTravel(
    double rampSeconds,
    double unlikeSeconds,
    double methodSeconds,
    boolean isCorrected,
    double roundRampSeconds,
    double outsideBoundSeconds) {
  /** No travel at all, for errors of a model without a rig. */
  public static final RampTravel NONE = new RampTravel(0, 0, 0);

  /** Where the law of the ramps makes no difference, without light outside the main opening. */
  public RampTravel(double rampSeconds, double unlikeSeconds, double methodSeconds) {
    this(rampSeconds, unlikeSeconds, methodSeconds, false, rampSeconds, 0);
  }

  public RampTravel {
    for (double seconds :
        new double[] {
          rampSeconds, unlikeSeconds, methodSeconds, roundRampSeconds, outsideBoundSeconds
        }) {
      if (!(seconds >= 0 && Double.isFinite(seconds))) {
        throw new IllegalArgumentException("a travel is 0 s or more, not " + seconds);
      }
    }
  }

  /**
   * The mean travel over some firings; what noise makes negative at slow speeds is no travel.
   *
   * @return empty where none was timed
   */
  public static Optional<RampTravel> of(List<Exposure.Timed> timed) {
    return timed.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new RampTravel(
                Math.max(
                    0,
                    mean(
                        timed,
                        t ->
                            t.travel().openingSeconds().middle()
                                + t.travel().closingSeconds().middle())),
                Math.abs(
                    mean(
                        timed,
                        t ->
                            t.travel().closingSeconds().middle()
                                - t.travel().openingSeconds().middle())),
                Math.max(0, mean(timed, Exposure.Timed::methodSeconds)),
                false,
                Math.max(
                    0,
                    mean(
                        timed,
                        t ->
                            t.blades()
                                .map(b -> b.openingPlusClosingSeconds(OpeningLaw.RADIUS_LINEAR))
                                .orElse(0.0))),
                mean(timed, Exposure.Timed::outsideBoundSeconds)));
  }

  /** The same with another bound for the light outside the main opening. */
  public RampTravel withOutsideBound(double seconds) {
    return new RampTravel(
        rampSeconds, unlikeSeconds, methodSeconds, isCorrected, roundRampSeconds, seconds);
  }

  /** The same where the rule of two levels is exact. */
  RampTravel withoutRule() {
    return withMethod(0, false);
  }

  /**
   * The same with another bound of the way by which the firings were timed.
   *
   * @param corrected whether a light curve corrected all of them
   */
  public RampTravel withMethod(double boundSeconds, boolean corrected) {
    return new RampTravel(
        rampSeconds, unlikeSeconds, boundSeconds, corrected, roundRampSeconds, outsideBoundSeconds);
  }

  private static double mean(List<Exposure.Timed> timed, ToDoubleFunction<Exposure.Timed> figure) {
    return timed.stream().mapToDouble(figure).average().orElseThrow();
  }
}
