package org.halflight.bench;

import java.util.Optional;
import org.halflight.rig.RigCommand;
import org.halflight.session.Session;

/**
 * Asks the rig where its thresholds stand, in a run that goes without setting the light: between
 * two firings and without a word to the person. For one thread.
 */
final class ThresholdLook {
  /** Beats of at most 262 ms to wait for the answer before it is asked again. */
  private static final int PATIENCE_BEATS = 8;

  private int beats;

  /** A beat came, and nothing is under way: gives the command to send, if any. */
  Optional<RigCommand> next(Session session) {
    if (!session.isThresholdsWanted()) {
      beats = 0;
      return Optional.empty();
    }
    return beats++ % PATIENCE_BEATS == 0
        ? Optional.of(new RigCommand.AskThresholds())
        : Optional.empty();
  }
}
