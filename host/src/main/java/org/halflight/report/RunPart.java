package org.halflight.report;

import java.util.Map;
import java.util.Optional;
import org.halflight.chart.Picture;
import org.halflight.verdict.RunSummary;

/**
 * One run on the page.
 *
 * @param run what it came to; at least one speed
 * @param when it was fired, as it is to be printed; may be empty
 * @param setup named values of its set-up, as they are to be printed; may be empty
 * @param gate the frame at the top speed; empty for other than curtains
 */
public record RunPart(
    RunSummary run, String when, Map<String, String> setup, Optional<Picture> gate) {
  /** Of a shutter without curtains. */
  public RunPart(RunSummary run, String when, Map<String, String> setup) {
    this(run, when, setup, Optional.empty());
  }

  public RunPart {
    setup = Map.copyOf(setup);
    if (run.speeds().isEmpty()) {
      throw new IllegalArgumentException("a run on the page has at least one speed");
    }
  }
}
