package org.halflight.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.Place;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainLimits;
import org.halflight.verdict.CurtainSpeed;
import org.halflight.verdict.Evenness;
import org.halflight.verdict.FlashSpeed;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.CurtainWords;
import org.halflight.words.Numbers;
import org.halflight.words.SpeedNames;
import org.halflight.words.Words;

/** What curtains do across the picture, in plain words: for the owner and the pocket card. */
final class FrameText {
  /** An error that is no tenth of a stop is none for the owner. */
  private static final double LEAST_STOPS = 0.05;

  private FrameText() {}

  /** One speed: its marking and how even it is. */
  record Row(MarkedSpeed speed, String centre, String evenness) {}

  /** The speeds at which more than the centre was measured, slow to fast; empty for blades. */
  static List<Row> rows(List<SpeedSummary> speeds) {
    List<Row> rows = new ArrayList<>();
    for (SpeedSummary speed : speeds) {
      speed
          .curtains()
          .ifPresent(its -> rows.add(new Row(speed.speed(), centre(speed), evenness(its))));
    }
    return rows;
  }

  /** All of it for the owner, speeds that are alike together, and then the flash. */
  static List<String> sentences(List<SpeedSummary> speeds) {
    List<String> said = new ArrayList<>();
    Map<List<String>, List<MarkedSpeed>> alike = new LinkedHashMap<>();
    for (Row row : rows(speeds)) {
      alike
          .computeIfAbsent(List.of(row.centre(), row.evenness()), words -> new ArrayList<>())
          .add(row.speed());
    }
    List<MarkedSpeed> all = rows(speeds).stream().map(Row::speed).toList();
    alike.forEach(
        (words, those) ->
            said.add(
                Words.say(
                    "page.owner.frame", SpeedNames.of(those, all), words.get(0), words.get(1))));
    if (!said.isEmpty()) {
      said.add(Words.say("page.owner.frame.start"));
      said.add(flash(speeds, "page.owner.flash"));
    }
    return said;
  }

  /** Up to which speed a flash is safe. */
  static String flash(List<SpeedSummary> speeds, String key) {
    Optional<MarkedSpeed> fastest = FlashSpeed.fastest(speeds);
    return fastest
        .map(speed -> Words.say(key, Numbers.speed(speed)))
        .orElseGet(() -> Words.say(key + ".none"));
  }

  private static String centre(SpeedSummary speed) {
    if (speed.meanStops().isEmpty()) {
      return Words.say("page.owner.frame.noTime");
    }
    double stops = speed.meanStops().getAsDouble();
    return Math.abs(stops) < LEAST_STOPS
        ? Words.say("page.owner.frame.right")
        : Words.say(stops > 0 ? "page.owner.frame.slow" : "page.owner.frame.fast", tenths(stops));
  }

  private static String evenness(CurtainSpeed speed) {
    for (Place place : List.of(Place.END, Place.START, Place.CENTRE)) {
      if (speed.capped().getOrDefault(place, 0) > 0) {
        return Words.say("page.owner.frame.capped-" + Place.WORDS.word(place));
      }
    }
    OptionalDouble slope = speed.mean(CurtainFigure.SLOPE);
    if (slope.isEmpty()) {
      return Words.say("page.owner.frame.centreOnly");
    }
    Evenness evenness =
        Evenness.of(
            slope.getAsDouble(),
            speed.mean(CurtainFigure.RANGE).orElse(Math.abs(slope.getAsDouble())),
            CurtainLimits.slopeStops(speed.wantedSeconds()));
    return CurtainWords.of(evenness, tenths(evenness.stops()));
  }

  private static String tenths(double stops) {
    return String.format(Locale.ROOT, "%.1f", Math.abs(stops));
  }
}
