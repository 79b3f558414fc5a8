package org.halflight.exposure;

/**
 * What the gap between curtain and film costs a focal-plane shutter: the cone of light through the
 * lens blurs the edges of the slit, so each point of the film sees light for longer than the slit
 * takes to pass, by the width of the penumbra.
 *
 * <p>H. E. Ives, <i>Airplane Photography</i>, 1920: efficiency {@code a / (a + d / N)} with slit
 * {@code a}, curtain-to-film distance {@code d} and f-number {@code N}.
 */
public final class SlitEfficiency {
  private SlitEfficiency() {}

  /** Width of the penumbra of one curtain edge in millimetres, {@code d / N}. */
  public static double penumbraMillimetres(double gapMillimetres, double fNumber) {
    if (!(gapMillimetres >= 0) || !(fNumber > 0)) {
      throw new IllegalArgumentException(
          "gap must not be below 0 and f-number above 0: " + gapMillimetres + " mm, f/" + fNumber);
    }
    return gapMillimetres / fNumber;
  }

  /** Effective time over total time at a point of the film, 0 to 1. */
  public static double of(double slitMillimetres, double gapMillimetres, double fNumber) {
    if (!(slitMillimetres > 0)) {
      throw new IllegalArgumentException("a slit is above 0 wide: " + slitMillimetres + " mm");
    }
    return slitMillimetres / (slitMillimetres + penumbraMillimetres(gapMillimetres, fNumber));
  }
}
