package org.halflight.exposure;

/**
 * How the effective time of a leaf shutter grows when the lens is stopped down. A model, to be
 * labelled as one wherever it is shown.
 *
 * <p>The stop passes the light of the hole up to its own area, {@code k^2} of the area at the stop
 * of the measurement with {@code k} = measured f-number / working f-number. The light at a working
 * stop is then above level {@code q} for as long as it was above {@code q k^2} at the stop of the
 * measurement, so by {@link LeafTravel}
 *
 * <pre>t(k) = total - p / (p + 1) * k^(2 / p) * (opening + closing)</pre>
 *
 * <p>It holds for {@code 0 < k <= 1}, if the leaves opened fully at the stop of the measurement. It
 * says nothing about wider stops: whether the leaves clear those was not seen. A hole that is off
 * the middle of the stop, or leaves that stand away from the stop, break it.
 *
 * @param totalSeconds total time at the stop of the measurement
 * @param openingPlusClosingSeconds opening plus closing time at the stop of the measurement
 */
public record StopTable(ByLaw totalSeconds, ByLaw openingPlusClosingSeconds) {
  /**
   * The effective time at a working stop under both laws, in seconds.
   *
   * @param k measured f-number / working f-number, above 0 and at most 1
   */
  public ByLaw effectiveSeconds(double k) {
    if (!(k > 0 && k <= 1)) {
      throw new IllegalArgumentException(
          "the stop table holds for stops no wider than the measured one, not for k = " + k);
    }
    return ByLaw.of(
        law ->
            totalSeconds.under(law)
                - law.lostPart() * law.timeTo(k * k) * openingPlusClosingSeconds.under(law));
  }

  /**
   * The same by f-numbers.
   *
   * @param measuredFNumber the f-number that the firing was measured at
   * @param workingFNumber the f-number asked for, not less than the measured one
   */
  public ByLaw effectiveSeconds(double measuredFNumber, double workingFNumber) {
    return effectiveSeconds(measuredFNumber / workingFNumber);
  }
}
