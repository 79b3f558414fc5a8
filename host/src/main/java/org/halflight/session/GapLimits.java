package org.halflight.session;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.speeds.DecimalComma;

/**
 * From where to where the film advance may unlock ahead of the shutter, in mm of the stroke of the
 * button; below zero it unlocks after it. There are no usual limits: nobody has put a number to it.
 */
public record GapLimits(double leastMm, double mostMm) {
  /** No button has a longer stroke, in mm. Our own limit. */
  public static final double MOST_MM = 10;

  private static final Pattern WRITTEN =
      Pattern.compile(
          "([-+]?\\d+(?:\\.\\d+)?)\\s*(?:mm)?\\s*(?:\\.\\.|to)\\s*([-+]?\\d+(?:\\.\\d+)?)\\s*(?:mm)?");

  public GapLimits {
    if (!(leastMm < mostMm) || !(leastMm >= -MOST_MM) || !(mostMm <= MOST_MM)) {
      throw new IllegalArgumentException(
          "limits go from low to high within the stroke: " + leastMm + ", " + mostMm);
    }
  }

  /** The limits that a person wrote, in mm: {@code 0..0.2} or {@code -0.1 to 0.1}. */
  public static Optional<GapLimits> find(String text) {
    Matcher written = WRITTEN.matcher(DecimalComma.pointed(text).toLowerCase(Locale.ROOT));
    if (!written.matches()) {
      return Optional.empty();
    }
    double least = Double.parseDouble(written.group(1));
    double most = Double.parseDouble(written.group(2));
    return least < most && least >= -MOST_MM && most <= MOST_MM
        ? Optional.of(new GapLimits(least, most))
        : Optional.empty();
  }

  /** As {@link #find} reads it. */
  public String text() {
    return leastMm + ".." + mostMm;
  }
}
