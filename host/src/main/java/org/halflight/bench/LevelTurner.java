package org.halflight.bench;

import java.util.Optional;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;

/**
 * Moves the one threshold of a small rig to the other level after each firing, and believes that it
 * is there only once the rig has read it back: a firing put down to the wrong level would be wrong
 * by the whole travel of the blades. Told what happens, it answers with what is to be done. For one
 * thread.
 */
final class LevelTurner {
  /** What is to be done. */
  sealed interface Next {
    /** Send a command. */
    record Send(RigCommand command) implements Next {}

    /** The threshold stands at a level from now on. */
    record Stands(Level level) implements Next {}

    /** The threshold does not go where the light had set it. */
    record Off() implements Next {}
  }

  /** Beats of at most 262 ms after which the threshold stands; its filter needs 0.1 s. */
  private static final int SETTLE_BEATS = 2;

  /** Beats without the read-back after which it is asked for again. */
  private static final int PATIENCE_BEATS = 6;

  /** While no light is known the two levels stand where those of a full rig do. */
  private ThresholdCodes codes = ThresholdCodes.AFTER_START;

  private Optional<LightLevels> light = Optional.empty();
  private Level level = Level.LOW;
  private boolean onItsWay;
  private int beats;

  /** Begins with the low level of a light: the command to send. */
  RigCommand begin(Optional<LightLevels> setLight, TripPoints trips) {
    light = setLight;
    codes =
        light
            .map(known -> ThresholdCodes.forLight(known.darkCounts(), known.fullCounts(), trips))
            .filter(ThresholdCodes.Found.class::isInstance)
            .map(found -> ((ThresholdCodes.Found) found).codes())
            .orElse(ThresholdCodes.AFTER_START);
    return to(Level.LOW);
  }

  /** A firing is over: the command to send. */
  RigCommand turn() {
    return to(level == Level.LOW ? Level.HIGH : Level.LOW);
  }

  /** Hears what the rig says; gives what is to be done because of it, if anything. */
  Optional<Next> onEvent(RigEvent event) {
    if (!onItsWay) {
      return Optional.empty();
    }
    if (event instanceof RigEvent.TimeAt) {
      beats++;
      return beats >= SETTLE_BEATS && (beats - SETTLE_BEATS) % PATIENCE_BEATS == 0
          ? Optional.of(new Next.Send(new RigCommand.AskThresholds()))
          : Optional.empty();
    }
    return event instanceof RigMessage.Thresholds read && beats >= SETTLE_BEATS
        ? Optional.of(judge(read))
        : Optional.empty();
  }

  private Next judge(RigMessage.Thresholds read) {
    if (read.lowCode() != code()) {
      // The command was lost on its way, or came after the question.
      return new Next.Send(to(level));
    }
    onItsWay = false;
    return light.isPresent()
            && Math.abs(read.lowSum64() / 64.0 - counts(light.get()))
                > ThresholdKeeper.ALLOWED_COUNTS
        ? new Next.Off()
        : new Next.Stands(level);
  }

  private RigCommand to(Level next) {
    level = next;
    onItsWay = true;
    beats = 0;
    return RigCommand.SetThresholds.one(code());
  }

  private int code() {
    return level == Level.LOW ? codes.low() : codes.high();
  }

  private double counts(LightLevels set) {
    return level == Level.LOW ? set.lowCounts() : set.highCounts();
  }
}
