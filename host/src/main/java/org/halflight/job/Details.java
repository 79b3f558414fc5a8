package org.halflight.job;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What is noted in words.
 *
 * @param noted none of them blank, none with space around it
 */
public record Details(Map<Detail, String> noted) {
  /** Nothing is noted. */
  public static final Details NONE = new Details(Map.of());

  public Details {
    Map<Detail, String> kept = new EnumMap<>(Detail.class);
    noted.forEach(
        (detail, words) -> {
          if (!words.isBlank()) {
            kept.put(detail, words.strip());
          }
        });
    noted = Collections.unmodifiableMap(kept);
  }

  /** What is noted of one; empty for nothing. */
  public String of(Detail detail) {
    return noted.getOrDefault(detail, "");
  }

  /** These and those. */
  public Details and(Details others) {
    Map<Detail, String> all = new EnumMap<>(Detail.class);
    all.putAll(noted);
    all.putAll(others.noted);
    return new Details(all);
  }
}
