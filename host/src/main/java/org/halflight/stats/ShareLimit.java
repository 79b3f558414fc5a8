package org.halflight.stats;

import org.apache.commons.math3.distribution.BetaDistribution;

/** How large the share of something may be that was seen so often (Clopper and Pearson 1934). */
public final class ShareLimit {
  private ShareLimit() {}

  /**
   * The exact one-sided upper limit of a share: with a greater one, no more than were seen would be
   * seen in {@code 1 - confidence} of cases at most.
   *
   * @param seen how many have it
   * @param of how many were looked at, one or more
   * @param confidence above 0, below 1
   */
  public static double upper(int seen, int of, double confidence) {
    if (of < 1 || seen < 0 || seen > of || !(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException(
          "no limit for " + seen + " of " + of + " with confidence " + confidence);
    }
    if (seen == 0) {
      return 1 - Math.pow(1 - confidence, 1.0 / of);
    }
    return seen == of
        ? 1
        : new BetaDistribution(null, seen + 1.0, of - seen).inverseCumulativeProbability(confidence);
  }
}
