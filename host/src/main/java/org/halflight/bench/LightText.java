package org.halflight.bench;

import java.util.Locale;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.light.LampLight;
import org.halflight.words.Numbers;
import org.halflight.words.Words;

/** The light and what is wrong with it, in sentences. */
public final class LightText {
  private LightText() {}

  /** How the light was set. */
  public static String done(LightLevels levels) {
    LevelPair pair = ((LightLevels.Known) levels.levels()).levels();
    return Words.say(
        "light.done",
        Numbers.percent(levels.fullCounts() / LightLevels.FULL_SCALE_COUNTS),
        Numbers.percent(levels.darkCounts() / levels.fullCounts()),
        Numbers.percent(pair.low()),
        Numbers.percent(pair.high()));
  }

  /** Why it was not, and what to do. */
  public static String refused(LightSetting.Refusal refusal) {
    return Words.say("light.again", why(refusal));
  }

  private static String why(LightSetting.Refusal refusal) {
    if (refusal instanceof LightSetting.Refusal.Levels levels) {
      return Words.say(
          "light.refused." + levels.reason().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    if (refusal instanceof LightSetting.Refusal.Lamp lamp) {
      return lamp(lamp.finding());
    }
    if (refusal instanceof LightSetting.Refusal.ThresholdsOff off) {
      return Words.say(
          "light.refused.thresholds-off",
          Numbers.percent(off.levels().low()),
          Numbers.percent(off.levels().high()));
    }
    if (refusal instanceof LightSetting.Refusal.Chatters) {
      return Words.say("light.refused.chatters");
    }
    return Words.say(
        refusal instanceof LightSetting.Refusal.Restarted
            ? "light.refused.restarted"
            : "light.refused.noAnswer");
  }

  private static String lamp(LampLight finding) {
    if (finding instanceof LampLight.MainsFlicker flicker) {
      return Words.say("light.refused.mains", flicker.hertz(), oneDecimal(flicker.depthPercent()));
    }
    if (finding instanceof LampLight.FastRipple ripple) {
      return Words.say("light.refused.ripple", oneDecimal(ripple.depthPercent()));
    }
    if (finding instanceof LampLight.Unsteady unsteady) {
      return Words.say(
          "light.refused.unsteady",
          oneDecimal(Math.abs(unsteady.driftPercent())),
          oneDecimal(unsteady.restPercent()));
    }
    return Words.say(
        "light.refused."
            + ((LampLight.Unknown) finding)
                .reason()
                .name()
                .toLowerCase(Locale.ROOT)
                .replace('_', '-'));
  }

  private static String oneDecimal(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
