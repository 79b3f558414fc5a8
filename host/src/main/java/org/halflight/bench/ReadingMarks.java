package org.halflight.bench;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.halflight.session.LightReading;

/** A reading of light as the values of its mark. */
final class ReadingMarks {
  private ReadingMarks() {}

  static Map<String, String> values(LightReading reading) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("of", LightReading.What.WORDS.word(reading.what()));
    if (!reading.at().isEmpty()) {
      values.put("at", reading.at());
      values.put("turned", reading.opening() ? "opening" : "closing");
    }
    values.put("counts", number(reading.counts()));
    values.put("uncertainty", number(reading.standardUncertaintyCounts()));
    values.put("blocks", String.valueOf(reading.blocks()));
    values.put("ticks", String.valueOf(reading.ticks()));
    return values;
  }

  /** The reading of a mark; an {@link IllegalArgumentException} where it is none. */
  static LightReading reading(Map<String, String> values) {
    return LightReading.of(
        LightReading.What.WORDS.parse(values.getOrDefault("of", "")),
        values.getOrDefault("at", ""),
        "opening".equals(values.get("turned")),
        Marks.finite(values.getOrDefault("counts", "")),
        Marks.finite(values.getOrDefault("uncertainty", "")),
        Integer.parseInt(values.getOrDefault("blocks", "")),
        Long.parseLong(values.getOrDefault("ticks", "")));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.6f", value);
  }
}
