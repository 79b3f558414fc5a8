package org.halflight.words;

import java.util.Locale;
import org.halflight.session.LightReading;

/** A reading of light in a sentence. */
final class ReadingWords {
  private ReadingWords() {}

  static String of(LightReading reading) {
    String counts =
        String.format(
            Locale.ROOT, "%.2f \u00b1 %.2f", reading.counts(), reading.standardUncertaintyCounts());
    return switch (reading.what()) {
      case LAMP_COVERED -> Words.say("reading.covered", counts);
      case SHUT_COCKED -> Words.say("reading.cocked", counts);
      case SHUT_UNCOCKED -> Words.say("reading.uncocked", counts);
      case FULL -> Words.say("reading.full", counts);
      case STOP ->
          Words.say(
              reading.opening() ? "reading.stop.opening" : "reading.stop.closing",
              reading.at(),
              counts);
      case PANEL_IN_PLACE -> Words.say("reading.panel.inPlace", counts);
      case PANEL_MOVED -> Words.say("reading.panel.moved", counts);
    };
  }
}
