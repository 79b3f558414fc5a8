package org.halflight.link;

import org.halflight.trouble.Trouble;

/** The rig's cable, power or driver went away. */
public final class LinkLostException extends Trouble {
  private static final long serialVersionUID = 1L;

  public LinkLostException(String sentence) {
    super(sentence);
  }

  public LinkLostException(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
