package org.halflight.trouble;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

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
    super(sentence);
  }

  /**
   * @param sentence what happened, what it means for the data, what to do; one line
   * @param cause the technical cause, kept for the log; null for none
   */
  public Trouble(String sentence, @Nullable Throwable cause) {
    super(sentence, cause);
  }

  /** The sentence. */
  @Override
  public String getMessage() {
    return Objects.requireNonNull(super.getMessage());
  }
}
