package org.halflight.shuttermodel;

/**
 * A lamp that is not quite steady.
 *
 * @param driftShare how much its light changes while it warms up, as a share of its first light;
 *     below zero it fades
 * @param warmUpSeconds time constant of that change, above zero
 * @param rippleHertz frequency of its ripple, 0 or more
 * @param rippleDepth amplitude of the ripple as a share of the light, 0 up to 1
 */
public record Lamp(
    double driftShare, double warmUpSeconds, double rippleHertz, double rippleDepth) {
  /** No drift and no ripple. */
  public static final Lamp STEADY = new Lamp(0, 1, 0, 0);

  public Lamp {
    if (!(driftShare > -1) || !Double.isFinite(driftShare) || !(warmUpSeconds > 0)) {
      throw new IllegalArgumentException("a lamp never fades to nothing and takes time to warm up");
    }
    if (!(rippleHertz >= 0) || !(rippleDepth >= 0 && rippleDepth < 1)) {
      throw new IllegalArgumentException("a ripple has a frequency and a depth of 0 up to 1");
    }
  }

  /** The light at a time since it was lit, as a share of its first mean light. */
  public double at(double seconds) {
    double drift = driftShare == 0 ? 0 : driftShare * -StrictMath.expm1(-seconds / warmUpSeconds);
    double ripple =
        rippleDepth == 0 ? 0 : rippleDepth * StrictMath.sin(2 * Math.PI * rippleHertz * seconds);
    return (1 + drift) * (1 + ripple);
  }

  /** Over this time a straight line is near enough to the lamp's light; infinite when steady. */
  double lineSeconds() {
    double ripple =
        rippleDepth == 0 || rippleHertz == 0 ? Double.POSITIVE_INFINITY : 1 / (64 * rippleHertz);
    double drift = driftShare == 0 ? Double.POSITIVE_INFINITY : warmUpSeconds / 64;
    return Math.min(ripple, drift);
  }
}
