package org.halflight.light;

/**
 * What it does to a time when the light does not fall evenly over the pupil of the lens.
 *
 * <p>A hole that opens from the middle sees the middle first. Where that is brighter than the edge,
 * the light rises too early and falls too late as a share of full light, and the time reads long,
 * never short. For light {@code 1 - a r^2} at {@code r} radii from the middle, {@code 1 - a} at the
 * edge, and a round hole whose radius grows evenly to {@code x} of the pupil's, the share of full
 * light is
 *
 * <pre>E(x) = (integral of (1 - a r^2) r dr from 0 to x) / (the same to 1)
 *      = (2 x^2 - a x^4) / (2 - a)</pre>
 *
 * <p>and its integral over the opening is {@code (2/3 - a/5) / (2 - a)}, against 1/3 where the
 * light is even. The difference, {@code (2a/15) / (2 - a)} of the opening time, is by what each
 * ramp reads long.
 */
public final class PupilLight {
  /**
   * How far light may fall from the middle of the pupil to its edge, as a share, where nobody
   * tested it: an opal panel close to the lens does better. Our choice.
   */
  public static final double UNTESTED_FALL = 0.2;

  private PupilLight() {}

  /**
   * By how much a time reads long, as a share of opening plus closing time.
   *
   * @param fall the share {@code a} by which light falls from the middle to the edge, 0 to 1
   */
  public static double readsLongShare(double fall) {
    if (!(fall >= 0 && fall <= 1)) {
      throw new IllegalArgumentException("light falls by 0 to 1 of itself, not " + fall);
    }
    return 2 * fall / 15 / (2 - fall);
  }
}
