package org.halflight.profile;

import org.halflight.signal.BoardTraits;

/**
 * The light for which a profile was made, in counts of the rig's ten-bit converter.
 *
 * @param darkCounts centre sensor in the dark
 * @param leastFullCounts the least full light that was tried
 * @param greatestFullCounts the greatest full light that was tried
 */
public record LightRange(double darkCounts, double leastFullCounts, double greatestFullCounts) {
  public LightRange {
    if (!(darkCounts >= 0
        && darkCounts < leastFullCounts
        && leastFullCounts <= greatestFullCounts
        && greatestFullCounts <= BoardTraits.FULL_SCALE_COUNTS)) {
      throw new IllegalArgumentException(
          "light must rise from dark to full within ten bits: "
              + darkCounts
              + ", "
              + leastFullCounts
              + ", "
              + greatestFullCounts);
    }
  }

  /**
   * Whether full light lies in the range or so little outside that nothing changes.
   *
   * @param slackShare how far outside is allowed, as a share of the light; 0.1 is a tenth
   */
  public boolean holds(double fullCounts, double slackShare) {
    return fullCounts >= leastFullCounts * (1 - slackShare)
        && fullCounts <= greatestFullCounts * (1 + slackShare);
  }
}
