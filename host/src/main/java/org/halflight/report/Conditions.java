package org.halflight.report;

import java.util.OptionalDouble;
import org.halflight.session.RunConditions;
import org.halflight.session.RunOption;
import org.halflight.speeds.DecimalComma;

/** What the conditions that a person noted for a run mean for the page. */
public final class Conditions {
  private Conditions() {}

  /** The f-number of the stop; empty where it was noted in other words, or not. */
  public static OptionalDouble fNumber(RunConditions conditions) {
    String stop =
        conditions.noted().getOrDefault(RunOption.STOP.name(), "").replaceFirst("^[fF]/?", "");
    try {
      double number = Double.parseDouble(DecimalComma.pointed(stop));
      return number > 0 && number < 1000 ? OptionalDouble.of(number) : OptionalDouble.empty();
    } catch (NumberFormatException noted) {
      // The stop was noted in words; the stop table then counts from it without naming it.
      return OptionalDouble.empty();
    }
  }
}
