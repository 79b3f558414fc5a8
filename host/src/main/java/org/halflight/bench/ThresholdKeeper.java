package org.halflight.bench;

import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;

/**
 * Puts the thresholds of a session's light back on a board that has started anew, and looks whether
 * they really stand there. Told what the rig says, it answers with the next command. For one
 * thread.
 */
final class ThresholdKeeper {
  /** Beats that the threshold filters get to settle. */
  private static final int SETTLE_BEATS = 2;

  /**
   * Counts of the converter by which a threshold may read otherwise than when the light was set:
   * half a code and its noise.
   */
  static final double ALLOWED_COUNTS = 4;

  private Optional<LightLevels> wanted = Optional.empty();
  private int beats;
  private boolean off;

  /** Begins to put the thresholds of a light back: the command to send. */
  Optional<RigCommand> restore(LightLevels light, TripPoints trips) {
    if (!(ThresholdCodes.forLight(light.darkCounts(), light.fullCounts(), trips)
        instanceof ThresholdCodes.Found found)) {
      return Optional.empty();
    }
    wanted = Optional.of(light);
    beats = 0;
    off = false;
    return Optional.of(new RigCommand.SetThresholds(found.codes().low(), found.codes().high()));
  }

  /** Hears what the rig says; gives the command to send because of it, if any. */
  Optional<RigCommand> onEvent(RigEvent event) {
    if (wanted.isEmpty()) {
      return Optional.empty();
    }
    if (event instanceof RigEvent.TimeAt && ++beats == SETTLE_BEATS + 1) {
      return Optional.of(new RigCommand.AskThresholds());
    }
    if (event instanceof RigMessage.Thresholds read && beats > SETTLE_BEATS) {
      off = !stands(read, wanted.get());
      wanted = Optional.empty();
    }
    return Optional.empty();
  }

  /** Whether the thresholds are being put back, and have not been read where they should be yet. */
  boolean isRestoring() {
    return wanted.isPresent();
  }

  /** Whether the thresholds were looked at and did not stand where they should; tells it once. */
  boolean isOff() {
    boolean now = off;
    off = false;
    return now;
  }

  private static boolean stands(RigMessage.Thresholds read, LightLevels light) {
    return Math.abs(read.lowSum64() / 64.0 - light.lowCounts()) <= ALLOWED_COUNTS
        && Math.abs(read.highSum64() / 64.0 - light.highCounts()) <= ALLOWED_COUNTS;
  }
}
