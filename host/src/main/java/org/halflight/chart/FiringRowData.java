package org.halflight.chart;

import java.util.List;
import java.util.Optional;

/**
 * Everything a firing row shows.
 *
 * @param speedLabel the marked speed as engraved
 * @param runName such as {@code as found}
 * @param asLeft whether firings are filled as those of a run as left, or hollow
 * @param releases in their order, at least one
 * @param mean of the firings that count, empty when none does
 * @param meanLevel confidence of its interval, above 0 and below 1
 * @param tolerance what counts as right
 * @param adjustments work between the releases
 * @param note where the numbers come from, printed at the foot; empty for none
 */
public record FiringRowData(
    String speedLabel,
    String runName,
    boolean asLeft,
    List<Release> releases,
    Optional<Mean> mean,
    double meanLevel,
    Tolerance tolerance,
    List<Adjustment> adjustments,
    String note) {
  public FiringRowData {
    releases = List.copyOf(releases);
    adjustments = List.copyOf(adjustments);
    if (releases.isEmpty()) {
      throw new IllegalArgumentException("a firing row has at least one release");
    }
    if (!(meanLevel > 0 && meanLevel < 1)) {
      throw new IllegalArgumentException("a level is above 0 and below 1, not " + meanLevel);
    }
    for (Adjustment adjustment : adjustments) {
      if (adjustment.beforeRelease() > releases.size() + 1) {
        throw new IllegalArgumentException(
            "no release " + adjustment.beforeRelease() + " in a row of " + releases.size());
      }
    }
  }
}
