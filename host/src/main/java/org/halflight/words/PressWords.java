package org.halflight.words;

import java.util.Locale;
import org.halflight.extratest.PressOutcome;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.session.PlungerReading;
import org.halflight.session.WindState;

/** Presses of the linkage test in sentences. */
public final class PressWords {
  private PressWords() {}

  /** A press that was judged, and what to do where it may be a slip. */
  static String counted(LinkagePress press) {
    String step = step(press.step());
    if (!press.counts()) {
      return Words.say("linkage.press.lost", press.number(), step);
    }
    boolean tripped = press.trips() > 0;
    PressOutcome outcome = PressOutcome.of(tripped, press.wind());
    boolean maybeNotPressed = press.step().isFullPress() && !tripped;
    return Words.say(
        maybeNotPressed
            ? "linkage.press.none"
            : outcome == PressOutcome.SHUTTER_ONLY ? "linkage.press.decides" : "linkage.press",
        press.number(),
        step,
        outcome(outcome));
  }

  /** What a step is called. */
  public static String step(LinkageStep step) {
    return Words.of("linkage.step", step);
  }

  /** What the person found when they tried the film advance. */
  public static String wind(WindState wind) {
    return Words.of("linkage.wind", wind);
  }

  /** In capitals, to be read from the bench. */
  public static String outcome(PressOutcome outcome) {
    return Words.of("linkage.outcome", outcome);
  }

  static String plunger(PlungerReading reading) {
    double gap = reading.gapMm();
    return Words.say(gap < 0 ? "linkage.plunger.behind" : "linkage.plunger", millimetres(gap));
  }

  /** To a hundredth: a division of the plunger is 0.025 mm. */
  static String millimetres(double millimetres) {
    return String.format(Locale.ROOT, "%.2f", Math.abs(millimetres));
  }
}
