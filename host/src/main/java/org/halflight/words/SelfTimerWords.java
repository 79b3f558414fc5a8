package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import org.halflight.extratest.SelfTimer;

/** The self-timer in sentences. */
public final class SelfTimerWords {
  private SelfTimerWords() {}

  /** How it is, and what else there is to know. */
  public static List<String> lines(SelfTimer timer) {
    List<String> lines = new ArrayList<>();
    if (timer.neverCame() > 0) {
      lines.add(Words.count("selfTimer.never", timer.neverCame(), timer.neverCame()));
    }
    if (timer.seconds().size() == 1) {
      lines.add(Words.say("selfTimer.once", Numbers.time(timer.seconds().get(0))));
    } else if (timer.seconds().size() > 1) {
      lines.add(
          Words.say(
              "selfTimer.time",
              Numbers.time(timer.times().orElseThrow().mean().get()),
              timer.seconds().size(),
              Numbers.time(timer.rangeSeconds()),
              Numbers.time(timer.times().orElseThrow().sd().get())));
    }
    if (timer.atOnce() > 0) {
      lines.add(Words.count("selfTimer.atOnce", timer.atOnce(), timer.atOnce()));
    }
    if (timer.withoutPress() > 0) {
      lines.add(Words.say("selfTimer.noRelease"));
    }
    return lines;
  }
}
