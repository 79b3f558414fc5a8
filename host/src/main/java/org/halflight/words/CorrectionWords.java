package org.halflight.words;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.job.CheckItem;
import org.halflight.job.CheckState;
import org.halflight.job.Correction;
import org.halflight.job.WorkKind;
import org.halflight.speeds.ShutterKind;

/** What stood in a field before somebody corrected it, in words. */
public final class CorrectionWords {
  private CorrectionWords() {}

  /** One sentence for each earlier value, the newest first. */
  public static List<String> lines(List<Correction> corrections, ZoneId zone) {
    return corrections.stream()
        .sorted((one, other) -> other.at().compareTo(one.at()))
        .map(each -> line(each, zone))
        .toList();
  }

  /** {@code Complaint, before 30 Nov 2026, 21:04: sticks}. */
  public static String line(Correction correction, ZoneId zone) {
    return Words.say(
        "correction.line",
        name(correction.field()),
        PhotoWords.moment(correction.at(), zone),
        value(correction, zone));
  }

  /** What a field is called. */
  public static String name(String field) {
    int slash = field.indexOf('/');
    if (slash > 0) {
      return Words.say(
          "correction.list." + field.substring(0, slash),
          CheckItem.WORDS
              .find(field.substring(slash + 1))
              .map(ExtraTestWords::item)
              .orElse(field.substring(slash + 1)));
    }
    String key = "correction.field." + field.toLowerCase(Locale.ROOT).replace('_', '-');
    return Words.has(key) ? Words.say(key) : field;
  }

  private static String value(Correction correction, ZoneId zone) {
    String field = correction.field();
    String earlier = correction.earlier();
    if (field.endsWith("_at_millis") && earlier.matches("-?\\d{1,18}")) {
      return PhotoWords.moment(Instant.ofEpochMilli(Long.parseLong(earlier)), zone);
    }
    if (field.endsWith("_micrometres") && earlier.matches("\\d{1,18}")) {
      return Words.say("sheet.millimetres", Long.parseLong(earlier) / 1000.0);
    }
    String first = earlier.split(" ", 2)[0];
    Optional<String> word =
        switch (field) {
          case "shutter" -> ShutterKind.WORDS.find(earlier).map(k -> Words.of("desk.shutter", k));
          case "struck", "taken_off" ->
              Optional.of(Words.say("correction." + field.replace('_', '-')));
          case "kind" -> WorkKind.WORDS.find(earlier).map(k -> Words.of("desk.work", k));
          default ->
              field.indexOf('/') > 0
                  ? CheckState.WORDS
                      .find(first)
                      .map(
                          state ->
                              (Words.of("correction.state", state)
                                      + earlier.substring(first.length()))
                                  .strip())
                  : Optional.empty();
        };
    return word.orElse(earlier);
  }
}
