package org.halflight.trouble;

import java.util.Objects;

/**
 * Something in the world around the program went wrong: a port, a file, a rig. The root of all such
 * troubles.
 *
 * <p>A caller's mistake is an {@link IllegalArgumentException} instead, and a measurement that
 * cannot be made is a value. The message is one line for the person at the bench: what happened,
 * what it means for the data, and what to do.
 */
public class Trouble extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param sentence what happened, what it means for the data, what to do; one line
   */
  public Trouble(String sentence) {
    super(Objects.requireNonNull(sentence));
  }

  /**
   * @param sentence what happened, what it means for the data, what to do; one line
   * @param cause the technical cause, kept for the log
   */
  public Trouble(String sentence, Throwable cause) {
    super(Objects.requireNonNull(sentence), cause);
  }
}
