package org.halflight.record;

import java.util.List;
import org.halflight.job.Id;
import org.halflight.job.Run;

/**
 * What taking in a session file came to.
 *
 * @param added firings that were new
 * @param completed firings that were there with their last edges cut off or with a damaged row, and
 *     now are whole
 * @param changed known firings about which something new was said
 * @param known firings that were there like this
 * @param differing firings that were not kept, since others are known by the same rig, start and
 *     ticks
 * @param damagedLines lines of the file that were no events
 * @param runs the runs of the file that the record knows
 */
public record ImportOutcome(
    int added,
    int completed,
    int changed,
    int known,
    int differing,
    int damagedLines,
    List<Id<Run>> runs) {
  public ImportOutcome {
    runs = List.copyOf(runs);
  }

  /** All firings of the file. */
  public int firings() {
    return added + completed + changed + known + differing;
  }
}
