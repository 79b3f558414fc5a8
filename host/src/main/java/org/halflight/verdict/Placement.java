package org.halflight.verdict;

/** Where the mean of a speed lies against its tolerance, as far as anybody can tell. */
public enum Placement {
  /** Within both limits by more than the guard band. */
  WITHIN,
  /** Beyond the slow limit by more than the guard band. */
  SLOW,
  /** Beyond the fast limit by more than the guard band. */
  FAST,
  /** Within the guard band of a limit: more firings or a calibrated rig may tell. */
  TOO_CLOSE_TO_CALL,
  /** Fewer than two timed firings: nothing is claimed. */
  TOO_FEW
}
