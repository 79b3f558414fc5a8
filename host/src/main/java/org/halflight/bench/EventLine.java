package org.halflight.bench;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The text of bench events, one a line; docs/file-formats.md describes it for people. A session
 * file has a {@link SessionForm} around it. What a session is known by in the record is made from
 * this text, so it never changes.
 *
 * <p>Whatever is no plain printable character is written as {@code %XX} (bytes of UTF-8), so that a
 * damaged line from a rig comes back letter for letter.
 */
public final class EventLine {
  private static final String HEX = "0123456789ABCDEF";

  private EventLine() {}

  /** One line for an event, without its line end and without the number of a mark. */
  public static String format(BenchEvent event) {
    if (event instanceof BenchEvent.Received received) {
      return "R " + received.hostNanos() + " " + escape(received.line(), " ");
    }
    if (event instanceof BenchEvent.Sent sent) {
      return "S " + sent.hostNanos() + " " + escape(sent.line(), " ");
    }
    BenchEvent.Mark mark = (BenchEvent.Mark) event;
    String values =
        mark.values().entrySet().stream()
            .map(value -> " " + escape(value.getKey(), "") + "=" + escape(value.getValue(), ""))
            .collect(Collectors.joining());
    return "M " + mark.hostNanos() + " " + mark.kind() + values;
  }

  /** The event of a line; empty when the line is none (cut short, or written by something else). */
  public static Optional<BenchEvent> parse(String line) {
    String[] parts = line.split(" ", 3);
    if (parts.length < 3 || parts[0].length() != 1) {
      return Optional.empty();
    }
    long nanos;
    try {
      nanos = Long.parseLong(parts[1]);
    } catch (NumberFormatException notATime) {
      return Optional.empty();
    }
    return switch (parts[0].charAt(0)) {
      case 'R' -> unescape(parts[2]).map(text -> new BenchEvent.Received(nanos, text));
      case 'S' -> unescape(parts[2]).map(text -> new BenchEvent.Sent(nanos, text));
      case 'M' -> parseMark(nanos, parts[2]);
      default -> Optional.empty();
    };
  }

  private static Optional<BenchEvent> parseMark(long nanos, String text) {
    String[] words = text.split(" ", -1);
    if (!words[0].matches("[a-z][a-z-]*")) {
      return Optional.empty();
    }
    Map<String, String> values = new LinkedHashMap<>();
    for (int i = 1; i < words.length; i++) {
      int equals = words[i].indexOf('=');
      if (equals <= 0) {
        return Optional.empty();
      }
      Optional<String> name = unescape(words[i].substring(0, equals));
      Optional<String> value = unescape(words[i].substring(equals + 1));
      if (name.isEmpty() || value.isEmpty()) {
        return Optional.empty();
      }
      values.put(name.get(), value.get());
    }
    return Optional.of(new BenchEvent.Mark(nanos, words[0], values));
  }

  private static String escape(String text, String alsoPlain) {
    StringBuilder out = new StringBuilder(text.length());
    for (byte each : text.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (each & 0xFF);
      boolean plain = c > ' ' && c < 0x7F && c != '%' && (c != '=' || alsoPlain.contains(" "));
      if (plain || alsoPlain.indexOf(c) >= 0) {
        out.append(c);
      } else {
        out.append('%').append(HEX.charAt(c >> 4)).append(HEX.charAt(c & 0xF));
      }
    }
    return out.toString();
  }

  private static Optional<String> unescape(String text) {
    byte[] bytes = new byte[text.length()];
    int n = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c > 0x7E) {
        return Optional.empty();
      }
      if (c != '%') {
        bytes[n++] = (byte) c;
        continue;
      }
      if (i + 2 >= text.length()) {
        return Optional.empty();
      }
      int high = Character.digit(text.charAt(i + 1), 16);
      int low = Character.digit(text.charAt(i + 2), 16);
      if (high < 0 || low < 0) {
        return Optional.empty();
      }
      bytes[n++] = (byte) (high << 4 | low);
      i += 2;
    }
    return Optional.of(new String(bytes, 0, n, StandardCharsets.UTF_8));
  }
}
