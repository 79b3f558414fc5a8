package org.halflight.exposure;

/**
 * The {@link StopTable} with the laws that the light curve shows, one for each ramp: {@code t(k) =
 * total - sum of p / (p + 1) * k^(2 / p) * length} over opening and closing. A model like that one,
 * but it does not have to show two laws.
 *
 * @param totalSeconds total time at the stop of the measurement
 * @param opening the opening at that stop
 * @param closing the closing at that stop
 */
public record CurveStopTable(double totalSeconds, Ramp opening, Ramp closing) {
  /**
   * The effective time at a working stop, in seconds.
   *
   * @param k measured f-number / working f-number, above 0 and at most 1
   */
  public double effectiveSeconds(double k) {
    if (!(k > 0 && k <= 1)) {
      throw new IllegalArgumentException(
          "the stop table holds for stops no wider than the measured one, not for k = " + k);
    }
    return totalSeconds - opening.lostSeconds(k * k) - closing.lostSeconds(k * k);
  }

  /**
   * The same by f-numbers.
   *
   * @param measuredFNumber the f-number that the firing was measured at
   * @param workingFNumber the f-number asked for, not less than the measured one
   */
  public double effectiveSeconds(double measuredFNumber, double workingFNumber) {
    return effectiveSeconds(measuredFNumber / workingFNumber);
  }
}
