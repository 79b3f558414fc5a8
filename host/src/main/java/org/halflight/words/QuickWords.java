package org.halflight.words;

import org.halflight.exposure.LightLevels;
import org.halflight.session.DialSetting;
import org.halflight.session.HeldLight;
import org.halflight.session.QuickRepeat;

/** What is said in a quick look. */
public final class QuickWords {
  private QuickWords() {}

  /** What to set, and what to do with it. */
  public static String shown(DialSetting setting) {
    return Words.say(
        setting.speed().isPresent() ? "news.quick.set" : "news.quick.hold",
        Sentences.dial(setting));
  }

  /** Which speed is fired again, and why. */
  public static String repeat(QuickRepeat repeat) {
    return Words.of("news.quick", repeat.why(), repeat.speed(), repeat.number());
  }

  /** What came of holding the shutter open. */
  static String held(HeldLight seen) {
    if (seen instanceof HeldLight.Known) {
      return Words.say("news.held.known");
    }
    if (seen instanceof HeldLight.NotSteady moved) {
      return Words.say("news.held.notSteady", Numbers.percent(moved.share()));
    }
    if (seen instanceof HeldLight.Refused refused) {
      return refused.reason() == LightLevels.Reason.THRESHOLD_NOT_BELOW_FULL
          ? Words.say("news.held.dim")
          : Words.say("news.held.refused", Words.of("light.refused", refused.reason()));
    }
    return Words.say(
        seen instanceof HeldLight.TooShort ? "news.held.tooShort" : "news.held.notKnown");
  }
}
