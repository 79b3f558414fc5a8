package org.halflight.profile;

/**
 * Where a comparator really switches, against the threshold voltage as the rig reads it back. In
 * counts of the ten-bit converter.
 *
 * @param risingCounts light less threshold at the moment when rising light switches it
 * @param fallingCounts the same for falling light; below {@code risingCounts} by the hysteresis
 * @param standardUncertaintyCounts of either
 */
public record TripPoints(
    double risingCounts, double fallingCounts, double standardUncertaintyCounts) {
  public TripPoints {
    Checked.finite(risingCounts);
    Checked.finite(fallingCounts);
    Checked.uncertainty(standardUncertaintyCounts);
  }

  /** How far the level in force lies above the threshold: the middle of both. */
  public double offsetCounts() {
    return (risingCounts + fallingCounts) / 2;
  }

  /** How much more light it takes to switch on than to switch off. */
  public double hysteresisCounts() {
    return risingCounts - fallingCounts;
  }
}
