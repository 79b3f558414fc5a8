package org.halflight.job;

import java.math.BigDecimal;

/**
 * A value that the person measured, such as the thickness of a shim. Kept with the digits that were
 * written, since 0.150 says more than 0.15.
 *
 * @param value the number
 * @param unit its unit, such as mm; not blank
 */
public record MeasuredValue(BigDecimal value, String unit) {
  public MeasuredValue {
    if (unit.isBlank()) {
      throw new IllegalArgumentException("a measured value has a unit: " + value);
    }
  }
}
