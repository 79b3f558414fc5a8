package org.halflight.desk.view;

import java.util.List;
import java.util.Optional;

/**
 * Sounds while somebody or the click sensor listens to the camera: the newest one comes a second
 * after the last edge, by the rig's time. For the bench thread only.
 */
final class HeldCues {
  /** Our own choice: longer than a shutter and a hand take to come to rest. */
  static final double QUIET_SECONDS = 1;

  private Optional<Cue> held = Optional.empty();

  /**
   * What may be heard now.
   *
   * @param cues that there would be now
   * @param listens whether the camera is listened to
   * @param quietSeconds since the last edge
   */
  List<Cue> release(List<Cue> cues, boolean listens, double quietSeconds) {
    if (!listens && held.isEmpty()) {
      return cues;
    }
    held = cues.stream().reduce((first, second) -> second).or(() -> held);
    if (quietSeconds < QUIET_SECONDS) {
      return List.of();
    }
    List<Cue> now = held.stream().toList();
    held = Optional.empty();
    return now;
  }
}
