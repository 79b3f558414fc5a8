package org.halflight.rig.practice;

import org.halflight.shuttermodel.LightPath;

/** The light of the practice rig's reference LED. All its figures are invented. */
final class ReferenceLed {
  /** What it adds, as a share of the full light of the sensors. */
  static final double SHARE = 0.95;

  /** Time constant of the low-pass filter of the ramped drive. */
  private static final double RAMP_SECONDS = 2e-3;

  /** After so many time constants the ramp has arrived but for a third of a thousandth. */
  private static final int RAMP_CONSTANTS = 8;

  private static final int POINTS_PER_CONSTANT = 16;

  private ReferenceLed() {}

  /** On from the start, added to a steady light. */
  static LightPath on(double base) {
    return new LightPath(new double[] {0, 0}, new double[] {base, base + SHARE});
  }

  /** Off from the start; the light of before remains. */
  static LightPath off(double base) {
    return new LightPath(new double[] {0, 0}, new double[] {base + SHARE, base});
  }

  /** One square pulse. */
  static LightPath square(double base, double widthSeconds) {
    return new LightPath(
        new double[] {0, 0, widthSeconds, widthSeconds},
        new double[] {base, base + SHARE, base + SHARE, base});
  }

  /** The same behind a low-pass filter of one pole. */
  static LightPath ramped(double base, double widthSeconds) {
    int points = RAMP_CONSTANTS * POINTS_PER_CONSTANT;
    double[] seconds = new double[2 * points + 2];
    double[] open = new double[2 * points + 2];
    double risen = Math.min(widthSeconds, RAMP_CONSTANTS * RAMP_SECONDS);
    double top = SHARE * -StrictMath.expm1(-widthSeconds / RAMP_SECONDS);
    for (int i = 0; i <= points; i++) {
      double rising = risen * i / points;
      seconds[i] = rising;
      open[i] = base + SHARE * -StrictMath.expm1(-rising / RAMP_SECONDS);
      double falling = RAMP_CONSTANTS * RAMP_SECONDS * i / points;
      seconds[points + 1 + i] = widthSeconds + falling;
      open[points + 1 + i] =
          i == points ? base : base + top * StrictMath.exp(-falling / RAMP_SECONDS);
    }
    return new LightPath(seconds, open);
  }
}
