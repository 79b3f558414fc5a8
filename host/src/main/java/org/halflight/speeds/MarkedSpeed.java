package org.halflight.speeds;

import java.util.Objects;

/**
 * A timed setting of a dial. B and T are no marked speeds: they are checks without a time.
 *
 * @param label as engraved, for example {@code 1/60} or {@code 2}
 * @param literalSeconds the marking taken as it is written
 * @param exactSeconds the power of two nearest to it
 */
public record MarkedSpeed(String label, double literalSeconds, double exactSeconds) {
  public MarkedSpeed {
    Objects.requireNonNull(label);
    if (!(literalSeconds > 0) || !(exactSeconds > 0)) {
      throw new IllegalArgumentException("a marked speed is above zero: " + label);
    }
  }

  /** The reference time in seconds under a reading of the marking. */
  public double seconds(Reference reference) {
    return reference == Reference.EXACT ? exactSeconds : literalSeconds;
  }

  @Override
  public String toString() {
    return label;
  }
}
