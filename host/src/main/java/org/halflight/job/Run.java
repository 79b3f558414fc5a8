package org.halflight.job;

import java.time.Instant;
import java.util.Optional;
import org.halflight.session.RunConditions;
import org.halflight.session.RunSetup;

/**
 * A run of a session.
 *
 * @param id what the record knows it by
 * @param visit the visit that it belongs to; empty while no camera was named
 * @param sessionKey what the record knows its session by, see the record's session keys
 * @param ordinal counts the runs of the session from 1
 * @param asked phase, dial, speeds, checks and firings asked for, and how the shutter was set up
 * @param beganAt when it began; empty when the session does not say
 */
public record Run(
    Id<Run> id,
    Optional<Id<Visit>> visit,
    String sessionKey,
    int ordinal,
    RunSetup asked,
    Optional<Instant> beganAt) {
  public Run {
    if (ordinal < 1) {
      throw new IllegalArgumentException("runs of a session count from 1: " + ordinal);
    }
  }

  /** The same run under a number of the record. */
  public Run withId(Id<Run> id) {
    return new Run(id, visit, sessionKey, ordinal, asked, beganAt);
  }

  /** The same run as one of a visit: the camera was named. */
  public Run withVisit(Id<Visit> visit) {
    return new Run(id, Optional.of(visit), sessionKey, ordinal, asked, beganAt);
  }

  /** The same run as one of no visit: the camera was named by mistake. */
  public Run withoutVisit() {
    return new Run(id, Optional.empty(), sessionKey, ordinal, asked, beganAt);
  }

  /** The same run with what was noted of its set-up and its rest. */
  public Run withConditions(RunConditions conditions) {
    return new Run(id, visit, sessionKey, ordinal, asked.withConditions(conditions), beganAt);
  }
}
