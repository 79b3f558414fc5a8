package org.halflight.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.verdict.RunSummary;

/**
 * A run that goes on the page.
 *
 * @param setup what was asked and how it was set up
 * @param beganAt when, where that is known
 * @param summary what it came to; at least one speed
 * @param firings of the run
 */
public record PageRun(
    RunSetup setup, Optional<Instant> beganAt, RunSummary summary, List<FiringResult> firings) {
  public PageRun {
    firings = List.copyOf(firings);
  }
}
