package org.halflight.words;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import org.halflight.job.Photo;

/** Pictures of a visit in words. */
public final class PhotoWords {
  private static final int NAMED = 3;

  private PhotoWords() {}

  /** Pictures joined the visit of a camera. */
  public static String joined(List<String> names, String camera) {
    return Words.count("photo.joined", names.size(), names.size(), some(names), camera);
  }

  /** Pictures fit no visit. */
  public static String waiting(List<String> names) {
    return Words.count("photo.waiting", names.size(), names.size(), some(names));
  }

  private static String some(List<String> names) {
    String first = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
    return names.size() <= NAMED ? first : Words.say("photo.more", first, names.size() - NAMED);
  }

  /** One picture of a list with its number, when it was taken, and what is noted of it. */
  public static String line(int number, Photo photo, ZoneId zone) {
    String line =
        photo.caption().isEmpty()
            ? Words.say("photo.line", number, moment(photo.takenAt(), zone), photo.name())
            : Words.say(
                "photo.line.caption",
                number,
                moment(photo.takenAt(), zone),
                photo.name(),
                photo.caption());
    return photo.isOff() ? Words.say("photo.line.off", line) : line;
  }

  /** Day and time of day. */
  public static String moment(Instant at, ZoneId zone) {
    ZonedDateTime local = at.atZone(zone);
    return Words.say(
        "photo.moment",
        Numbers.shortDate(local.toLocalDate()),
        String.format(Locale.ROOT, "%02d:%02d", local.getHour(), local.getMinute()));
  }
}
