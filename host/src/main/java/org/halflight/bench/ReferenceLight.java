package org.halflight.bench;

import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.light.LightFlutter;
import org.halflight.rig.RigCommand;

/**
 * The light of the reference LED at the centre sensor, in counts.
 *
 * @param darkCounts with the LED off
 * @param ledCounts with it on
 * @param flutter by what that moves
 */
record ReferenceLight(double darkCounts, double ledCounts, LightFlutter flutter) {
  /** More light than this with the LED off comes from elsewhere. */
  private static final double DARK_MOST_COUNTS = 100;

  /** An LED that brings no more than this is out. */
  private static final double LED_LEAST_COUNTS = 20;

  static ReferenceLight measure(TaskRunner runner) throws CalibrationRefused {
    runner.command(RigCommand.DriveReference.off());
    double dark = runner.run(new LightTask()).counts();
    runner.command(RigCommand.DriveReference.steady());
    LightTask lit = runner.run(new LightTask());
    double led = lit.counts();
    runner.command(RigCommand.DriveReference.off());
    if (led < dark - LED_LEAST_COUNTS) {
      throw new CalibrationRefused(new CalibrationRefusal.Inverted(dark, led));
    }
    if (led > LightLevels.SATURATED_COUNTS) {
      throw new CalibrationRefused(new CalibrationRefusal.Saturated(led));
    }
    if (led - dark <= LED_LEAST_COUNTS) {
      throw new CalibrationRefused(
          dark > DARK_MOST_COUNTS
              ? new CalibrationRefusal.NotDark(dark)
              : new CalibrationRefusal.NoLed(dark, led));
    }
    if (dark > DARK_MOST_COUNTS) {
      throw new CalibrationRefused(new CalibrationRefusal.NotDark(dark));
    }
    if (led - dark < LightLevels.LEAST_LIGHT_COUNTS) {
      throw new CalibrationRefused(new CalibrationRefusal.TooDim(led));
    }
    return new ReferenceLight(dark, led, lit.flutter());
  }

  /** The codes nearest to levels of this light. */
  ThresholdCodes codes(LevelPair levels) {
    return new ThresholdCodes(code(levels.low()), code(levels.high()));
  }

  private int code(double level) {
    double counts = darkCounts + level * (ledCounts - darkCounts);
    return Math.max(0, Math.min(255, (int) Math.round((counts + 0.5) / 4) - 1));
  }

  /** Which part of the light lies below a threshold. */
  double level(double counts) {
    return (counts - darkCounts) / (ledCounts - darkCounts);
  }
}
