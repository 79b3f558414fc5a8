package org.halflight.bench;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.halflight.session.FiringKey;

/** Keys of firings as the value of a mark: {@code SERIAL/BOOT/TICKS}, with commas between. */
public final class FiringKeys {
  private FiringKeys() {}

  /** Keys as text. */
  public static String format(List<FiringKey> keys) {
    return keys.stream()
        .map(key -> key.rigSerial() + "/" + key.bootCount() + "/" + key.firstTicks())
        .collect(Collectors.joining(","));
  }

  /**
   * The keys of a text.
   *
   * @throws IllegalArgumentException where it is none of ours
   */
  public static List<FiringKey> parse(String text) {
    return text.isEmpty()
        ? List.of()
        : Arrays.stream(text.split(",", -1)).map(FiringKeys::parseOne).toList();
  }

  /**
   * @throws IllegalArgumentException where the text is none of ours
   */
  static FiringKey parseOne(String text) {
    String[] parts = text.split("/", -1);
    if (parts.length != 3) {
      throw new IllegalArgumentException("not the key of a firing: " + text);
    }
    return new FiringKey(parts[0], Long.parseLong(parts[1]), Long.parseLong(parts[2]));
  }
}
