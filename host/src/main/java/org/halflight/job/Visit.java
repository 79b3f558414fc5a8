package org.halflight.job;

import java.time.Instant;
import java.util.Optional;

/**
 * One stay of a camera at the bench, from intake to hand-back.
 *
 * @param id what the record knows it by
 * @param camera which camera
 * @param jobNumber the workshop's number of the job; may be empty
 * @param receivedAt when it came in
 * @param handedBackAt when it went back; empty while it is here
 * @param intake what was found when it came in
 * @param handBack what was found before it went back
 * @param details those of a visit
 */
public record Visit(
    Id<Visit> id,
    Id<Camera> camera,
    String jobNumber,
    Instant receivedAt,
    Optional<Instant> handedBackAt,
    Checklist intake,
    Checklist handBack,
    Details details) {
  /** A visit that begins, with empty lists. */
  public static Visit begins(Id<Camera> camera, String jobNumber, Instant receivedAt) {
    return new Visit(
        Id.ofNew(),
        camera,
        jobNumber,
        receivedAt,
        Optional.empty(),
        Checklist.EMPTY,
        Checklist.EMPTY,
        Details.NONE);
  }

  /** The same visit under a number of the record. */
  public Visit withId(Id<Visit> id) {
    return new Visit(id, camera, jobNumber, receivedAt, handedBackAt, intake, handBack, details);
  }

  /** The same visit with another number of the job and other details. */
  public Visit with(String jobNumber, Details details) {
    return new Visit(id, camera, jobNumber, receivedAt, handedBackAt, intake, handBack, details);
  }

  /** The same visit with other lists. */
  public Visit with(Checklist intake, Checklist handBack) {
    return new Visit(id, camera, jobNumber, receivedAt, handedBackAt, intake, handBack, details);
  }

  /** The same visit with another intake list. */
  public Visit withIntake(Checklist intake) {
    return new Visit(id, camera, jobNumber, receivedAt, handedBackAt, intake, handBack, details);
  }

  /** The same visit, not handed back. */
  public Visit hereAgain() {
    return new Visit(
        id, camera, jobNumber, receivedAt, Optional.empty(), intake, handBack, details);
  }

  /** Whether the camera was here at a moment. */
  public boolean isOpenAt(Instant at) {
    return !at.isBefore(receivedAt) && handedBackAt.map(at::isBefore).orElse(true);
  }

  /** The same visit at its end. */
  public Visit handedBack(Instant at, Checklist handBack) {
    return new Visit(id, camera, jobNumber, receivedAt, Optional.of(at), intake, handBack, details);
  }
}
