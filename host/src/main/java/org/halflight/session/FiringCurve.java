package org.halflight.session;

import java.util.Objects;
import java.util.Optional;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * The light curve of a firing, raw, with the light that it is held against, so that it can be
 * worked out again.
 *
 * @param sampled as the rig sampled it
 * @param light dark and full light as they were set; empty where they were not
 * @param exposure what it comes to; empty without a set light
 */
public record FiringCurve(
    SampledLight sampled, Optional<LightLevels> light, Optional<CurveExposure> exposure) {
  public FiringCurve {
    Objects.requireNonNull(sampled);
    Objects.requireNonNull(light);
    Objects.requireNonNull(exposure);
  }

  /** A curve, worked out with today's method. */
  public static FiringCurve of(SampledLight sampled, Optional<LightLevels> light, TickRate rate) {
    return new FiringCurve(
        sampled, light, light.map(levels -> CurveMethod.measure(sampled, levels, rate)));
  }
}
