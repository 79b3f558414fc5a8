package org.halflight.words;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import org.halflight.job.DryRun;

/** Dry runs that cameras still want, in words. */
public final class DryRunWords {
  private DryRunWords() {}

  /** Which camera wants its dry run, and since when. */
  public static String line(DryRun due, Instant now, ZoneId zone) {
    LocalDate day = due.dueOn(zone);
    long days = ChronoUnit.DAYS.between(day, LocalDate.ofInstant(now, zone));
    String when = days < 0 ? "tomorrow" : days == 0 ? "today" : days == 1 ? "yesterday" : "since";
    return Words.say("dryRun." + when, due.name(), Numbers.date(day));
  }
}
