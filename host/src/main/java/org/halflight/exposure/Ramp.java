package org.halflight.exposure;

/**
 * One opening or closing of the leaves as the light curve shows it: light {@code E = ((t - dark) /
 * length)^p}, read forwards on opening and backwards on closing.
 *
 * @param power p; 1 where the area grows evenly, 2 where the radius of a round hole does
 * @param darkSeconds when the ramp meets the dark, from the first reading of the curve
 * @param seconds from dark to full light, above 0; where the leaves never opened fully, the time
 *     that they would have taken
 * @param misfit root of the mean square by which the readings miss the law, as a part of full light
 * @param readings how many readings it rests on
 */
public record Ramp(double power, double darkSeconds, double seconds, double misfit, int readings) {
  public Ramp {
    if (!(power > 0) || !(seconds > 0)) {
      throw new IllegalArgumentException("a ramp rises: p " + power + ", " + seconds + " s");
    }
  }

  /**
   * The time that this ramp takes from the effective time behind a stop that passes a part of the
   * light, {@code p / (p + 1) * part^(1 / p) * seconds}; see {@link StopTable}.
   *
   * @param part the area of the stop as a part of that of the measurement, above 0 and at most 1
   */
  double lostSeconds(double part) {
    return power / (power + 1) * Math.pow(part, 1 / power) * seconds;
  }
}
