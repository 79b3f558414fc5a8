package org.halflight.job;

/**
 * One answer of a list.
 *
 * @param state how the item was found
 * @param note in the person's words; may be empty
 */
public record Finding(CheckState state, String note) {
  /** Nothing was looked at and nothing is claimed. */
  public static final Finding NOT_TESTED = new Finding(CheckState.NOT_TESTED, "");
}
