package org.halflight.verdict;

import org.halflight.stats.ShareLimit;

/**
 * Releases of a setting that are not like the others: those that have no time, and those whose time
 * lies further from the median than the tolerance reaches to that side. They decide nothing. What
 * matters is how many there may be where few or none were seen.
 *
 * @param odd how many
 * @param releases of so many; the first after rest, and those that special conditions keep out of
 *     the mean, are among them only where they have no time
 */
public record OddOnes(int odd, int releases) {
  static OddOnes of(SpeedSummary speed) {
    double median = speed.medianStops().orElseThrow();
    int far = BeyondLimits.of(speed.errors().plus(-median), speed.tolerance()).either();
    int inPlay =
        speed.errors().n()
            + speed.conditions().leftOut()
            + (speed.afterRestStops().isPresent() ? 1 : 0);
    int untimed = Math.max(0, speed.tries() - inPlay);
    return new OddOnes(far + untimed, speed.errors().n() + untimed);
  }

  /**
   * The share of odd ones among all releases that is not excluded, with confidence {@link
   * SpeedSummary#LEVEL}.
   */
  public double upperShare() {
    return ShareLimit.upper(odd, releases, SpeedSummary.LEVEL);
  }
}
