package org.halflight.job;

import java.util.Objects;

/**
 * One answer of a list.
 *
 * @param state how the item was found
 * @param note in the person's words; may be empty
 */
public record Finding(CheckState state, String note) {
  /** Nothing was looked at and nothing is claimed. */
  public static final Finding NOT_TESTED = new Finding(CheckState.NOT_TESTED, "");

  public Finding {
    Objects.requireNonNull(state);
    Objects.requireNonNull(note);
  }
}
