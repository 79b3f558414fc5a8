package org.halflight.session;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * From where to where the film advance may free before the blades, in seconds; below zero it frees
 * after them.
 *
 * <p>That it is to free first, by a hair, and is to be adjusted when it does so by a plain margin,
 * is trade custom (common practice, no source). How long a hair is, nobody has put a number to: the
 * usual limits are our choice and the user's to change.
 *
 * @param leastSeconds less than this is too late
 * @param mostSeconds more than this is too early
 */
public record LinkageLimits(double leastSeconds, double mostSeconds) {
  /** From together to 3 ms before; our choice. */
  public static final LinkageLimits USUAL = new LinkageLimits(0, 0.003);

  /** A linkage is not looked for further from the opening than this, in seconds. Our choice. */
  public static final double REACH_SECONDS = 0.06;

  private static final Pattern WRITTEN =
      Pattern.compile(
          "([-+]?\\d+(?:\\.\\d+)?)\\s*(?:ms)?\\s*(?:\\.\\.|to)\\s*([-+]?\\d+(?:\\.\\d+)?)\\s*(?:ms)?");

  public LinkageLimits {
    if (!(Math.abs(leastSeconds) <= REACH_SECONDS)
        || !(Math.abs(mostSeconds) <= REACH_SECONDS)
        || mostSeconds <= leastSeconds) {
      throw new IllegalArgumentException(
          "limits go from low to high and stay within reach: " + leastSeconds + ", " + mostSeconds);
    }
  }

  /**
   * The limits that a person wrote, in milliseconds: {@code 0..3} or {@code -0.5 to 2}; nothing for
   * the usual ones. Empty where they cannot be understood.
   */
  public static Optional<LinkageLimits> find(String text) {
    if (text.isBlank()) {
      return Optional.of(USUAL);
    }
    Matcher written = WRITTEN.matcher(text.strip().toLowerCase(Locale.ROOT));
    if (!written.matches()) {
      return Optional.empty();
    }
    double least = Double.parseDouble(written.group(1)) / 1e3;
    double most = Double.parseDouble(written.group(2)) / 1e3;
    boolean fits = least < most && least >= -REACH_SECONDS && most <= REACH_SECONDS;
    return fits ? Optional.of(new LinkageLimits(least, most)) : Optional.empty();
  }

  /** As {@link #find} reads it; nothing for the usual ones. */
  public String text() {
    return equals(USUAL) ? "" : millis(leastSeconds) + ".." + millis(mostSeconds);
  }

  /** In the middle between the limits, in seconds. */
  public double middleSeconds() {
    return (leastSeconds + mostSeconds) / 2;
  }

  private static String millis(double seconds) {
    return Double.toString(Math.round(1e6 * seconds) / 1e3);
  }
}
