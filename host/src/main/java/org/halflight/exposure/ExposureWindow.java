package org.halflight.exposure;

/**
 * Which light beside the main opening is one exposure with it, by edges as by a light curve: what
 * begins within {@link LeafExposureMethod#EXPOSURE_GAP_SECONDS} of it, however long it lasts.
 */
final class ExposureWindow {
  private ExposureWindow() {}

  /**
   * Whether light is part of the exposure. All times are seconds on one clock.
   *
   * @param begins when it begins
   * @param opens when the main opening begins
   * @param closes when the main opening ends
   */
  static boolean holds(double begins, double opens, double closes) {
    double apart = begins < opens ? opens - begins : begins - closes;
    return apart <= LeafExposureMethod.EXPOSURE_GAP_SECONDS;
  }
}
