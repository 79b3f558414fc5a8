package org.halflight.exposure;

/**
 * A moving slit and what widens its shadow. Light falls on a place for as long as slit and blur
 * together take to pass, and what falls amounts to the slit alone: of the total time the share
 * {@code slit / (slit + blur)} is exposure (Ives, 1920, for film a distance {@code g} behind the
 * slit and a lens at {@code f/N}: the blur is {@code g / N}). So blur makes motion less sharp and
 * leaves the exposure as it is.
 */
public final class SlitLight {
  private SlitLight() {}

  /** Effective over total time, 0 to 1; lengths in one unit. */
  public static double efficiency(double slit, double blur) {
    return slit / (slit + blur);
  }

  /** Blur on film behind a slit, in the unit of the gap. */
  public static double blur(double gap, double fNumber) {
    return gap / fNumber;
  }
}
