package org.halflight.bench;

/** Carries a refusal out of the middle of a procedure; never leaves this package. */
final class CalibrationRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient CalibrationRefusal refusal;

  CalibrationRefused(CalibrationRefusal refusal) {
    super(refusal.toString());
    this.refusal = refusal;
  }

  CalibrationRefusal refusal() {
    return refusal;
  }
}
