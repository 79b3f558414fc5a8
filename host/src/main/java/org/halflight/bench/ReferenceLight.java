package org.halflight.bench;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.light.LightFlutter;
import org.halflight.profile.LightRange;
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
    double dark = runner.run(LightTask.asItIs()).counts();
    LightTask lit = runner.run(LightTask.ofTheLed());
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

  /**
   * The full light of a lamp for which both thresholds stand where pulses were made: delays hang on
   * how far and how fast the light crosses a threshold.
   *
   * @param tried the pairs of levels of this light
   */
  LightRange range(List<LevelPair> tried) {
    double least = 0;
    double greatest = Double.MAX_VALUE;
    for (ToDoubleFunction<LevelPair> level :
        List.<ToDoubleFunction<LevelPair>>of(LevelPair::low, LevelPair::high)) {
      double node = level.applyAsDouble(LevelPair.GAUSS);
      DoubleSummaryStatistics all = tried.stream().mapToDouble(level).summaryStatistics();
      least = Math.max(least, all.getMin() / node);
      greatest = Math.min(greatest, all.getMax() / node);
    }
    double span = ledCounts - darkCounts;
    return new LightRange(
        darkCounts,
        Math.min(ledCounts, darkCounts + least * span),
        Math.max(ledCounts, Math.min(LightLevels.SATURATED_COUNTS, darkCounts + greatest * span)));
  }

  /** Which part of the light lies below a threshold. */
  double level(double counts) {
    return (counts - darkCounts) / (ledCounts - darkCounts);
  }
}
