package org.halflight.link;

import org.halflight.trouble.Trouble;

/** A port could not be opened. */
public final class LinkRefusedException extends Trouble {
  private static final long serialVersionUID = 1L;

  /** Why not. */
  public enum Reason {
    /** The person may not use the port. */
    NO_PERMISSION,
    /** Another program has it. */
    BUSY,
    /** It is not there, or no longer. */
    ABSENT,
    /** The part of the program that opens ports does not work on this computer. */
    NO_DRIVER,
    /** Something else. */
    FAILED
  }

  private final Reason reason;

  public LinkRefusedException(Reason reason, String sentence) {
    super(sentence);
    this.reason = reason;
  }

  public LinkRefusedException(Reason reason, String sentence, Throwable cause) {
    super(sentence, cause);
    this.reason = reason;
  }

  /** Why the port could not be opened. */
  public Reason reason() {
    return reason;
  }
}
