package org.halflight.exposure;

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
   * The slit of a curtain at the centre of the frame, timed as if it were blades. A method that
   * reads the travel of the curtains takes its place.
   */
  ExposureMethod CURTAIN = LEAF;

  /**
   * The method for a shutter.
   *
   * @param kind how it is built
   * @param dial key of its dial, which tells where nobody said the kind
   */
  static ExposureMethod of(ShutterKind kind, String dial) {
    if (kind == ShutterKind.LEAF_REFLEX) {
      return LEAF_REFLEX;
    }
    return kind.isCurtain(dial) ? CURTAIN : LEAF;
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

  /** Measures a firing that is over. */
  default Exposure measure(Firing crossings, LevelPair levels, TickRate rate) {
    return measure(crossings, levels, rate, crossings.lastTicks());
  }
}
