package org.halflight.verdict;

/** Where the mean of a speed lies against its tolerance, as far as the firings tell. */
public enum Placement {
  /** The whole interval of the mean lies within. */
  WITHIN,
  /** The whole interval lies beyond the slow limit. */
  SLOW,
  /** The whole interval lies beyond the fast limit. */
  FAST,
  /** The interval reaches over a limit: more firings may tell. */
  TOO_CLOSE_TO_CALL,
  /** Fewer than two timed firings: nothing is claimed. */
  TOO_FEW
}
