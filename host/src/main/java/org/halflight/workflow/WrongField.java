package org.halflight.workflow;

import org.halflight.trouble.Trouble;

/** A field of a form that cannot be understood: the sentence, and which field it is about. */
public final class WrongField extends Trouble {
  private static final long serialVersionUID = 1L;

  /** The speeds to fire. */
  public static final String SPEEDS = "speeds";

  /** How many firings of each speed. */
  public static final String FIRINGS = "firings";

  /** The stage of work. */
  public static final String PHASE = "phase";

  private final String field;

  /**
   * @param field its name: one of those here, or that of a run option
   */
  WrongField(String field, String sentence) {
    super(sentence);
    this.field = field;
  }

  /** The name of the field. */
  public String field() {
    return field;
  }
}
