package org.halflight.verdict;

import java.util.List;
import org.halflight.session.FiringResult;

/** Which firings of a speed count together in a run in which things are adjusted. */
public final class SinceAdjustment {
  private SinceAdjustment() {}

  /**
   * Those after an adjustment: a mean over it would be a mean of two shutters. All of them where
   * the speed was not fired since.
   *
   * @param firings of one speed in one run, or all of it
   * @param afterFiring number of the firing after which it was done; 0 where nothing was
   */
  public static List<FiringResult> of(List<FiringResult> firings, int afterFiring) {
    List<FiringResult> since = firings.stream().filter(f -> f.number() > afterFiring).toList();
    return since.isEmpty() ? firings : since;
  }
}
