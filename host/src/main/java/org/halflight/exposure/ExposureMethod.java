package org.halflight.exposure;

import java.util.Optional;
import org.halflight.signal.Firing;
import org.halflight.speeds.ShutterKind;
import org.halflight.time.TickRate;

/** How the edges of a firing become an exposure. It goes by how the shutter is built. */
@FunctionalInterface
public interface ExposureMethod {
  /** Blades that open and close at the centre of the frame: the rule of two levels. */
  ExposureMethod LEAF = LeafExposureMethod::measure;

  /** The same behind the flap or mirror of a body with reflex viewing. */
  ExposureMethod LEAF_REFLEX = LeafExposureMethod::measureBehindFlap;

  /**
   * The method for a shutter.
   *
   * @param kind how it is built
   * @param curtains where three sensors are behind its two curtains; without it the slit is timed
   *     at the centre as if it were blades
   */
  static ExposureMethod of(ShutterKind kind, Optional<CurtainGeometry> curtains) {
    if (kind == ShutterKind.LEAF_REFLEX) {
      return LEAF_REFLEX;
    }
    return curtains.<ExposureMethod>map(CurtainMethod::new).orElse(LEAF);
  }

  /**
   * Measures a firing that is over or under way.
   *
   * @param crossings its edges, each where the light crossed
   * @param levels in force, as fractions of full light
   * @param rate how fast the board counts
   * @param nowTicks the shutter is known to have stayed as the last edges left it until this time
   */
  Exposure measure(Firing crossings, LevelPair levels, TickRate rate, long nowTicks);

  /**
   * The same with what is known of the sensors and the clock; of no matter for blades.
   *
   * @param sensors what is known of them
   * @param clockShare bound of the rate of the board's clock, as a share
   */
  default ExposureMethod knowing(OuterSensors sensors, double clockShare) {
    return this;
  }

  /** Measures a firing that is over. */
  default Exposure measure(Firing crossings, LevelPair levels, TickRate rate) {
    return measure(crossings, levels, rate, crossings.lastTicks());
  }
}
