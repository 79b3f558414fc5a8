package org.halflight.uncertainty;

/** What a figure of a budget rests on. */
public enum Basis {
  /** An allowance for any rig that was built as described; nobody has measured this one. */
  ALLOWANCE,
  /** The calibration of this rig. */
  CALIBRATION,
  /** What the session itself found of this rig while it measured. */
  SESSION,
  /** The firings themselves. */
  FIRINGS,
  /** There is no rig: errors of a model, straight. */
  NO_RIG
}
