package org.halflight.record;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.extratest.ExtraTest;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.Source;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.Stage;

/**
 * One run in the history of a camera.
 *
 * @param visit the visit that it belongs to
 * @param run what was asked and how it was set up
 * @param firings all its firings
 * @param sources where its figures come from; practice and simulator are to be marked
 * @param rigs serial numbers of the rigs that measured it
 * @param speeds its speeds, slow to fast; empty when nothing was fired at a speed
 * @param tried what was tried in it beside the marked speeds
 * @param stage what it is as a stage of assembly; empty for another run
 */
public record RunHistory(
    Visit visit,
    Run run,
    int firings,
    Set<Source> sources,
    Set<String> rigs,
    List<SpeedSummary> speeds,
    List<ExtraTest> tried,
    Optional<Stage> stage) {
  public RunHistory {
    sources = Set.copyOf(sources);
    rigs = Set.copyOf(rigs);
    speeds = List.copyOf(speeds);
    tried = List.copyOf(tried);
  }
}
