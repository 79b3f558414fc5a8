package org.halflight.verdict;

/** How much of the dial a change reaches. */
public enum ChangeExtent {
  /** No change is shown at any speed. */
  NOTHING,
  /** One speed alone. */
  ONE_SPEED,
  /** Speeds that the slow-speed train governs, most of them, and no other. */
  SLOW_SPEEDS,
  /** Several speeds that are neither the slow ones nor all. */
  SOME_SPEEDS,
  /** The whole dial by the same amount, single speeds excepted. */
  WHOLE_DIAL
}
