package org.halflight.record;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.Source;
import org.halflight.verdict.SpeedSummary;

/**
 * One run in the history of a camera.
 *
 * @param visit the visit that it belongs to
 * @param run what was asked and how it was set up
 * @param firings all its firings
 * @param sources where its figures come from; practice and simulator are to be marked
 * @param speeds its speeds, slow to fast; empty when nothing was fired at a speed
 */
public record RunHistory(
    Visit visit, Run run, int firings, Set<Source> sources, List<SpeedSummary> speeds) {
  public RunHistory {
    Objects.requireNonNull(visit);
    Objects.requireNonNull(run);
    sources = Set.copyOf(sources);
    speeds = List.copyOf(speeds);
  }
}
