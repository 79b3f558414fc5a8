package org.halflight.session;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.halflight.speeds.DecimalComma;
import org.halflight.speeds.Millimetres;

/**
 * An adjuster as it was found, or turned since. It is kept as words of the work log, in the form
 * that {@link #find} reads.
 *
 * @param adjuster which
 * @param isAsFound whether it is what was found; else what was done
 * @param turns as found: turns of a spring from slack, or of a screw from its stop, where they were
 *     counted. What was done: by how much, above 0 tighter for a spring and clockwise for the
 *     others
 * @param words how it was found beside that, such as where the slot points; may be empty
 */
public record AdjusterTurn(
    Adjuster adjuster, boolean isAsFound, OptionalDouble turns, String words) {
  private static final String NUMBER = "\\d{1,3}(?:\\.\\d{1,3})?";
  private static final String COUNT = "(?:(\\d{1,3})\\s+)?(\\d{1,3})/(\\d{1,3})|(" + NUMBER + ")";
  private static final Pattern WRITTEN =
      Pattern.compile(
          "([a-z-]+)\\s+(?:(found)\\b|([-+\u2212]))\\s*(?:(?:"
              + COUNT
              + ")(?:\\s+turns?)?(?=\\s|$))?\\s*(.*)");

  public AdjusterTurn {
    if (!isAsFound && (turns.isEmpty() || !words.isEmpty())) {
      throw new IllegalArgumentException("by how much " + adjuster + " was turned is not said");
    }
  }

  /** What a person found, counted. */
  public static AdjusterTurn found(Adjuster adjuster, double turns) {
    return new AdjusterTurn(adjuster, true, OptionalDouble.of(turns), "");
  }

  /** What a person turned, above 0 tighter or clockwise. */
  public static AdjusterTurn turned(Adjuster adjuster, double turns) {
    return new AdjusterTurn(adjuster, false, OptionalDouble.of(turns), "");
  }

  /**
   * Words that say such a thing: {@code first-tension found 3 1/2}, {@code slit found slot at two
   * o'clock}, {@code first-tension +1/4}, {@code second-brake -0.5 turns}.
   */
  public static Optional<AdjusterTurn> find(String typed) {
    Matcher written = WRITTEN.matcher(DecimalComma.pointed(typed));
    Optional<Adjuster> adjuster =
        written.matches()
            ? Adjuster.WORDS.find(written.group(1).toLowerCase(Locale.ROOT))
            : Optional.empty();
    if (adjuster.isEmpty()) {
      return Optional.empty();
    }
    OptionalDouble count = count(written);
    String words = written.group(8).strip();
    if (written.group(2) != null) {
      return count.isEmpty() && words.isEmpty()
          ? Optional.empty()
          : Optional.of(new AdjusterTurn(adjuster.get(), true, count, words));
    }
    if (count.isEmpty() || count.getAsDouble() == 0 || !words.isEmpty()) {
      return Optional.empty();
    }
    double by = written.group(3).equals("+") ? count.getAsDouble() : -count.getAsDouble();
    return Optional.of(turned(adjuster.get(), by));
  }

  private static OptionalDouble count(Matcher written) {
    if (written.group(7) != null) {
      return OptionalDouble.of(Double.parseDouble(written.group(7)));
    }
    if (written.group(6) == null || Integer.parseInt(written.group(6)) == 0) {
      return OptionalDouble.empty();
    }
    double whole = written.group(4) == null ? 0 : Integer.parseInt(written.group(4));
    return OptionalDouble.of(
        whole + (double) Integer.parseInt(written.group(5)) / Integer.parseInt(written.group(6)));
  }

  /** As {@link #find} reads it. */
  public String text() {
    String number =
        turns.isEmpty()
            ? ""
            : (isAsFound ? " " : turns.getAsDouble() < 0 ? " -" : " +")
                + Millimetres.text(Math.rint(Math.abs(turns.getAsDouble()) * 1e3) / 1e3);
    String name = Adjuster.WORDS.word(adjuster);
    return (name + (isAsFound ? " found" : "") + number + " " + words).strip();
  }
}
