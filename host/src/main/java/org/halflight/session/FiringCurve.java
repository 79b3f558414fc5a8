package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.Decided;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * The light curve of a firing, raw, with the light that it is compared with, so that it can be
 * worked out again. That of an outer sensor is looked at and times nothing.
 *
 * @param sampled as the rig sampled it
 * @param light dark and full light as they were set; empty where they were not
 * @param exposure what it comes to; empty without a set light
 * @param fullLightAfter full light measured after the firing, as a share of the one that was set;
 *     known of firings that waited for it only
 * @param decided what it comes to together with the edges of its firing; empty where the two were
 *     not compared
 */
public record FiringCurve(
    SampledLight sampled,
    Optional<LightLevels> light,
    Optional<CurveExposure> exposure,
    OptionalDouble fullLightAfter,
    Optional<Decided> decided) {
  /** A curve, worked out with today's method. */
  public static FiringCurve of(SampledLight sampled, Optional<LightLevels> light, TickRate rate) {
    Optional<LightLevels> its = light.filter(levels -> sampled.isOfCentre());
    return new FiringCurve(
        sampled,
        its,
        its.map(levels -> CurveMethod.measure(sampled, levels, rate)),
        OptionalDouble.empty(),
        Optional.empty());
  }

  /** The same curve, with full light measured after its firing. */
  public FiringCurve withFullLightAfter(OptionalDouble share) {
    return new FiringCurve(sampled, light, exposure, share, decided);
  }

  /** Whether another one is of the same readings under the same light. */
  public boolean isRawlyThat(FiringCurve other) {
    return sampled.equals(other.sampled) && light.equals(other.light);
  }

  FiringCurve with(Optional<Decided> comesTo) {
    return new FiringCurve(sampled, light, exposure, fullLightAfter, comesTo);
  }
}
