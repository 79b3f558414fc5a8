package org.halflight.job;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which visit was on the bench when. Cameras wait in a workshop side by side; one is worked on. */
public final class BenchStays {
  private record Stay(Instant from, Optional<Id<Visit>> visit) {}

  private final List<Stay> stays = new ArrayList<>();

  /** From now on this visit is on the bench; empty for none. */
  public void begins(Optional<Id<Visit>> visit, Instant now) {
    stays.add(new Stay(now, visit));
  }

  /**
   * The visit that somebody worked on at a moment: the one on the bench, and before anything is
   * known of the bench the only one that was open.
   *
   * @param open the visits that were open then
   */
  public Optional<Id<Visit>> meant(List<Visit> open, Instant moment) {
    Optional<Stay> stay =
        stays.stream()
            .filter(each -> !each.from().isAfter(moment))
            .reduce((earlier, later) -> later);
    return open.stream()
        .map(Visit::id)
        .filter(id -> stay.map(its -> its.visit().equals(Optional.of(id))).orElse(open.size() == 1))
        .findFirst();
  }
}
