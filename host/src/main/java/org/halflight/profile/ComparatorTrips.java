package org.halflight.profile;

/**
 * Where one comparator really switches, against the threshold voltage as the rig reads it back. In
 * counts of the ten-bit converter.
 *
 * <p>Found by a sweep, falling may come out a little above rising: a hysteresis below zero, which
 * no comparator has, but which noise makes of one near zero. It stays as it was found, since
 * cutting it off at zero would make the mean of many findings too large.
 *
 * @param risingCounts light less threshold at the moment when rising light switches it
 * @param fallingCounts the same for falling light; below {@code risingCounts} by the hysteresis
 * @param standardUncertaintyCounts of either
 */
public record ComparatorTrips(
    double risingCounts, double fallingCounts, double standardUncertaintyCounts) {
  /** Switches just where its threshold stands. */
  public static final ComparatorTrips EXACT = new ComparatorTrips(0, 0, 0);

  public ComparatorTrips {
    Checked.finite(risingCounts);
    Checked.finite(fallingCounts);
    Checked.uncertainty(standardUncertaintyCounts);
  }

  /**
   * From the middle of both ways and their distance.
   *
   * @param offsetCounts see {@link #offsetCounts()}
   * @param hysteresisCounts see {@link #hysteresisCounts()}
   */
  public static ComparatorTrips around(
      double offsetCounts, double hysteresisCounts, double standardUncertaintyCounts) {
    return new ComparatorTrips(
        offsetCounts + hysteresisCounts / 2,
        offsetCounts - hysteresisCounts / 2,
        standardUncertaintyCounts);
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
