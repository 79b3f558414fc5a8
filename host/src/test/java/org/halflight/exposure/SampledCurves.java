package org.halflight.exposure;

import org.halflight.shuttermodel.CurveSampler;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.signal.LightCurve;
import org.halflight.signal.SampledLight;

/** Sampled light curves of a model front end: 1 us of lag, 1.5 mV of noise, eight bits. */
final class SampledCurves {
  static final FrontEnd SENSOR = new FrontEnd(40, 4000, 1, 1.5, Lamp.STEADY);

  /** What the rig would read of that sensor in the dark and fully open: counts of 5 V / 1024. */
  static final LightLevels LEVELS =
      new LightLevels(counts(40), counts(4000), counts(877), counts(3163));

  private SampledCurves() {}

  static double counts(double millivolts) {
    return millivolts * 1024 / 5000 - 0.5;
  }

  static SampledLight of(LightCurve curve, long seed) {
    return CurveSampler.INVENTED.sample(
        SENSOR, LightPath.of(curve), 16_000_000, 877, new SeededDraws(seed));
  }
}
