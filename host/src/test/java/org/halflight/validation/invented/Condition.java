package org.halflight.validation.invented;

/** What is known of an invented rig, and what it tells. */
public enum Condition {
  CALIBRATED("calibrated", true, false),
  /** With light curves, and the panel of light tested too. */
  CALIBRATED_WITH_CURVE("calibrated, light curve", true, true),
  UNCALIBRATED("not calibrated", false, false);

  private final String words;
  private final boolean calibrated;
  private final boolean curves;

  Condition(String words, boolean calibrated, boolean curves) {
    this.words = words;
    this.calibrated = calibrated;
    this.curves = curves;
  }

  public String words() {
    return words;
  }

  public boolean isCalibrated() {
    return calibrated;
  }

  public boolean hasCurves() {
    return curves;
  }
}
