package org.halflight.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.light.PanelTest;
import org.halflight.light.PupilLight;
import org.halflight.verdict.SpeedSummary;

/** How evenly the light fills the lens, in sentences. */
public final class PanelWords {
  private PanelWords() {}

  /** What a test of the panel came to. */
  public static List<String> lines(PanelTest test) {
    double fall = test.fallBound();
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            "panel.limits",
            Numbers.percent(fall),
            Numbers.percent(PupilLight.readsLongShare(fall))));
    lines.add(
        Words.say(
            fall > PupilLight.UNTESTED_FALL ? "panel.worse" : "panel.holds",
            Numbers.percent(PupilLight.UNTESTED_FALL)));
    return lines;
  }

  /** What stands beside a fast speed where nobody tested the panel; empty where it says nothing. */
  public static Optional<String> untested(SpeedSummary speed) {
    return speed.untestedPupilStops().isPresent()
        ? Optional.of(
            Words.say("speed.pupil", Numbers.signedStops(speed.untestedPupilStops().getAsDouble())))
        : Optional.empty();
  }
}
