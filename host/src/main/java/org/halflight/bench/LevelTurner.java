package org.halflight.bench;

import java.util.Optional;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;

/**
 * Moves the one threshold of a small rig to the other level after each firing. Told what happens,
 * it answers with the next command. For one thread.
 */
final class LevelTurner {
  /** Beats of at most 262 ms after which the threshold stands; its filter needs 0.1 s. */
  private static final int SETTLE_BEATS = 2;

  /** Where the two levels of the full rig stand after its start: no light is known yet. */
  private static final ThresholdCodes UNKNOWN_LIGHT = new ThresholdCodes(0x2B, 0xA1);

  private ThresholdCodes codes = UNKNOWN_LIGHT;
  private Level level = Level.LOW;
  private boolean onItsWay;
  private int beats;

  /** Begins with the low level of a light: the command to send. */
  RigCommand begin(Optional<LightLevels> light, TripPoints trips) {
    codes =
        light
            .map(known -> ThresholdCodes.forLight(known.darkCounts(), known.fullCounts(), trips))
            .filter(ThresholdCodes.Found.class::isInstance)
            .map(found -> ((ThresholdCodes.Found) found).codes())
            .orElse(UNKNOWN_LIGHT);
    return to(Level.LOW);
  }

  /** A firing is over: the command to send. */
  RigCommand turn() {
    return to(level == Level.LOW ? Level.HIGH : Level.LOW);
  }

  /** Hears what the rig says; gives the level at which the threshold stands from now on. */
  Optional<Level> hear(RigEvent event) {
    if (onItsWay && event instanceof RigEvent.TimeAt && ++beats >= SETTLE_BEATS) {
      onItsWay = false;
      return Optional.of(level);
    }
    return Optional.empty();
  }

  private RigCommand to(Level next) {
    level = next;
    onItsWay = true;
    beats = 0;
    return new RigCommand.SetThresholds(next == Level.LOW ? codes.low() : codes.high(), 255);
  }
}
