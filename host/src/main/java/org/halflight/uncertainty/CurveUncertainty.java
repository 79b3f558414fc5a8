package org.halflight.uncertainty;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.CurveExposure.Measured;

/**
 * How far the effective time of light curves may be off, in the mean of some of them.
 *
 * @param converterSeconds what the converter and its steps leave open, plus or minus
 * @param noiseSeconds standard deviation by the noise of the readings
 * @param windowSeconds light that the windows or the floor of the readings may have hidden, plus or
 *     minus
 * @param fullLightShare how well full light is known by having been measured again, plus or minus,
 *     as a share of it
 * @param supplyShare how well a level that is read beside each firing takes a moving supply out of
 *     full light, plus or minus, as a share of it; empty where there is none, or where no firing
 *     shows full light again
 * @param rampSeconds opening plus closing time, on which light over the pupil acts; all of the time
 *     where the ramps are not known
 */
public record CurveUncertainty(
    double converterSeconds,
    double noiseSeconds,
    double windowSeconds,
    double fullLightShare,
    OptionalDouble supplyShare,
    double rampSeconds) {
  /** One reading of a window: 256 ticks of 16 MHz. */
  private static final double READING_SECONDS = 16e-6;

  /** A step of eight bits in the least light that is allowed, evenly spread. */
  private static final double STEP_SHARE = 4.0 / 200 / Math.sqrt(12);

  /**
   * Light below the floor of 1 % is not counted: 0.06 % of a ramp whose light starts as the fourth
   * power, and a ramp loses less than half of itself to the exposure only where it starts sooner.
   */
  private static final double UNSEEN_SHARE = 0.002;

  /** One count of the converter in the least light that is allowed. */
  private static final double FULL_LIGHT_READ_TO = 0.005;

  /**
   * The reference of the chip moves by 5 mV a volt of supply and 0.1 mV a degree (data sheet, from
   * memory): 0.1 % for a supply of 1 % and ten degrees. Each of its two readings adds half a count
   * of some 225, 0.22 %, in quadrature.
   */
  private static final double SUPPLY_FOLLOWED_TO = 0.004;

  public CurveUncertainty {
    for (double doubt :
        new double[] {converterSeconds, noiseSeconds, windowSeconds, fullLightShare, rampSeconds}) {
      if (!(doubt >= 0 && Double.isFinite(doubt))) {
        throw new IllegalArgumentException("a doubt is 0 or more, not " + doubt);
      }
    }
  }

  /**
   * The same where each firing opened fully, so that it showed full light again, and the level read
   * beside it followed the supply: what the lamp may have done is then seen, not allowed for.
   */
  public CurveUncertainty withSupplyFollowed() {
    return new CurveUncertainty(
        converterSeconds,
        noiseSeconds,
        windowSeconds,
        fullLightShare,
        OptionalDouble.of(SUPPLY_FOLLOWED_TO),
        rampSeconds);
  }

  /**
   * Of the curves that decide at one speed.
   *
   * @param curves at least one
   * @param fullLightOff how far full light, measured again, was from the one that was set, as a
   *     share, 0 or more
   */
  public static CurveUncertainty of(List<Measured> curves, double fullLightOff) {
    return new CurveUncertainty(
        mean(curves, curve -> curve.toleranceSeconds() - curve.addedSeconds() / 2),
        mean(curves, CurveUncertainty::noiseSeconds),
        mean(curves, CurveUncertainty::windowSeconds),
        fullLightOff + FULL_LIGHT_READ_TO,
        OptionalDouble.empty(),
        mean(curves, CurveUncertainty::rampSeconds));
  }

  private static double rampSeconds(Measured curve) {
    return curve.opening().isPresent() && curve.closing().isPresent()
        ? Math.min(
            curve.totalSeconds(), curve.opening().get().seconds() + curve.closing().get().seconds())
        : curve.totalSeconds();
  }

  private static double noiseSeconds(Measured curve) {
    double reading =
        Math.max(
            curve.opening().map(ramp -> ramp.misfit()).orElse(STEP_SHARE),
            curve.closing().map(ramp -> ramp.misfit()).orElse(STEP_SHARE));
    return reading * Math.sqrt(curve.totalSeconds() * READING_SECONDS);
  }

  private static double windowSeconds(Measured curve) {
    return curve.addedSeconds() / 2
        + UNSEEN_SHARE * Math.max(0, curve.totalSeconds() - curve.mainSeconds());
  }

  private static double mean(List<Measured> curves, ToDoubleFunction<Measured> figure) {
    return curves.stream().mapToDouble(figure).average().orElseThrow();
  }
}
