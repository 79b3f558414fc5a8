package org.halflight.words;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import org.halflight.job.WorkEntry;
import org.halflight.speeds.DecimalComma;

/** The work log in words. */
public final class WorkWords {
  private WorkWords() {}

  /** What was done, with the value that was measured. */
  public static String text(WorkEntry entry) {
    return entry
        .measured()
        .map(m -> Words.say("desk.log.withValue", entry.text(), m.value(), m.unit()).strip())
        .orElse(entry.text());
  }

  /** Day, kind of work, and what was done. */
  public static String line(WorkEntry entry, ZoneId zone) {
    String line =
        Words.say(
            "desk.log.entry",
            Numbers.shortDate(LocalDate.ofInstant(entry.at(), zone)),
            Words.of("desk.work", entry.kind()),
            text(entry));
    return entry.isStruck() ? Words.say("desk.log.struck", line) : line;
  }

  /** A number as a person types it, with a point or a decimal comma; empty for anything else. */
  public static Optional<BigDecimal> number(String typed) {
    String point = DecimalComma.pointed(typed);
    return point.matches("-?\\d{1,6}(\\.\\d{1,6})?")
        ? Optional.of(new BigDecimal(point))
        : Optional.empty();
  }
}
