package org.halflight.uncertainty;

/**
 * One row of a budget.
 *
 * @param part of the uncertainty
 * @param doubt the input, in the unit that {@link UncertaintySource} names
 * @param sensitivity seconds of effective time for one unit of the input, 0 or more
 * @param standardSeconds what it comes to in seconds of effective time; of a bias its bound
 * @param standardStops the same in stops
 */
public record BudgetRow(
    UncertaintySource part,
    InputUncertainty doubt,
    double sensitivity,
    double standardSeconds,
    double standardStops) {
  public BudgetRow {
    if (!(sensitivity >= 0) || !(standardSeconds >= 0) || !(standardStops >= 0)) {
      throw new IllegalArgumentException("a row of a budget is 0 or more: " + part);
    }
  }

  static BudgetRow of(
      UncertaintySource part, InputUncertainty doubt, double sensitivity, double effectiveSeconds) {
    double seconds = sensitivity * doubt.standard();
    return new BudgetRow(
        part, doubt, sensitivity, seconds, seconds / (effectiveSeconds * Math.log(2)));
  }

  /** Whether it is one unknown error of all firings, which is added by its bound. */
  public boolean isBias() {
    return doubt.distribution().isBias();
  }

  /** Whether it is the same for all firings, so that more of them do not lessen it. */
  public boolean isCommon() {
    return part != UncertaintySource.REPEATABILITY;
  }
}
