package org.halflight.extratest;

import java.util.OptionalDouble;
import org.halflight.stats.Sample;

/**
 * One measured value of something that was tried.
 *
 * @param quantity what it is, as a key of the sentences and in tables: lower case with hyphens
 * @param at the marked speed, stop or setting that it belongs to; empty where it has none
 * @param value in the unit
 * @param unit as in tables: {@code s}, {@code ms}, {@code stops}, {@code %}, {@code count}
 * @param n of how many firings or readings it is the mean; 1 for a single one
 * @param spread standard deviation over them, in the unit; empty where there is none
 */
public record ExtraTestValue(
    String quantity, String at, double value, String unit, int n, OptionalDouble spread) {
  public ExtraTestValue {
    if (n < 1) {
      throw new IllegalArgumentException("a value of " + n + " readings");
    }
  }

  /** One value by itself. */
  public static ExtraTestValue single(String quantity, String at, double value, String unit) {
    return new ExtraTestValue(quantity, at, value, unit, 1, OptionalDouble.empty());
  }

  /** The mean of at least one value in the unit of the table. */
  public static ExtraTestValue mean(String quantity, String at, Sample sample, String unit) {
    return of(quantity, at, sample, 1, unit);
  }

  /** The mean of at least one share, in percent. */
  public static ExtraTestValue ofShares(String quantity, String at, Sample shares) {
    return of(quantity, at, shares, 100, "%");
  }

  private static ExtraTestValue of(
      String quantity, String at, Sample sample, double scale, String unit) {
    return new ExtraTestValue(
        quantity,
        at,
        scale * sample.mean().get(),
        unit,
        sample.n(),
        sample
            .sd()
            .known()
            .map(sd -> OptionalDouble.of(scale * sd))
            .orElse(OptionalDouble.empty()));
  }
}
