package org.halflight.job;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * The run that a camera wants once it is dry, since it was fired as left while it was still wet
 * from cleaning: on the next day. Common practice, no source.
 *
 * @param name what the workshop calls the job: its number, or the camera's label
 * @param firedWetAt when it was fired wet, the first time since it was dry
 */
public record DryRun(String name, Instant firedWetAt) {
  /** The day from which it is due. */
  public LocalDate dueOn(ZoneId zone) {
    return LocalDate.ofInstant(firedWetAt, zone).plusDays(1);
  }
}
