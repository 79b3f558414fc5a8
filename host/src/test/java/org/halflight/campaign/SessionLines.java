package org.halflight.campaign;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * Writes session files, as docs/file-formats.md has them. Takes plain lines, {@code R NANOS TEXT},
 * {@code S NANOS TEXT} and {@code M NANOS WORDS}, and gives marks their numbers and lines their
 * sums where the form has them.
 */
final class SessionLines {
  static final String FIRST = "halflight-session 1";
  static final String SECOND = "halflight-session 2";

  /** The light is set such that the thresholds stand at the Gauss nodes. */
  static final String LIGHT = "light dark=20.0000 full=820.0000 low=189.0599 high=650.9401";

  private static final Pattern MARK = Pattern.compile("M (\\d+) .*");

  private final boolean numbered;
  private final List<String> lines = new ArrayList<>();
  private long number;

  /** A new file of the form that is written today. */
  SessionLines() {
    this(List.of(SECOND));
  }

  /**
   * A file that is gone on with, in its own form.
   *
   * @param before what is in it
   */
  SessionLines(List<String> before) {
    numbered = before.get(0).equals(SECOND);
    lines.addAll(before);
    for (String line : before) {
      Matcher mark = MARK.matcher(line);
      if (numbered && isWhole(line) && mark.matches()) {
        number = Math.max(number, Long.parseLong(mark.group(1)));
      }
    }
  }

  /** Takes a plain line; gives it as it stands in the file. */
  String add(String plain) {
    String line = plain;
    if (numbered) {
      line = plain.charAt(0) == 'M' ? "M " + ++number + plain.substring(1) : plain;
      line = line + ' ' + sum(line);
    }
    lines.add(line);
    return line;
  }

  /** A line from the rig. */
  SessionLines received(long nanos, String text) {
    add("R " + nanos + ' ' + escaped(text, true));
    return this;
  }

  /**
   * A mark.
   *
   * @param words its kind and its values, {@code NAME=VALUE}, escaped already
   */
  SessionLines mark(long nanos, String words) {
    add("M " + nanos + ' ' + words);
    return this;
  }

  /** How every session begins. */
  SessionLines begins(String at, String name) {
    return mark(0, "begins version=0.1.0 at=" + at + " session=" + name);
  }

  /** The number of the last mark; 0 where marks have none. */
  long lastNumber() {
    return number;
  }

  List<String> lines() {
    return lines;
  }

  /** The whole file. */
  String text() {
    return String.join("\n", lines) + "\n";
  }

  /** Whether a line of the second form ends with the sum of what stands before it. */
  static boolean isWhole(String line) {
    int end = line.lastIndexOf(' ');
    return end > 0 && sum(line.substring(0, end)).equals(line.substring(end + 1));
  }

  /** A value of a mark. */
  static String value(String text) {
    return escaped(text, false);
  }

  private static String sum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.ISO_8859_1));
    return Hex.of(8, sum.getValue());
  }

  private static String escaped(String text, boolean ofTheWire) {
    StringBuilder out = new StringBuilder(text.length());
    for (byte each : text.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (each & 0xFF);
      boolean plain = c > ' ' && c < 0x7F && c != '%';
      if (ofTheWire ? plain || c == ' ' : plain && c != '=') {
        out.append(c);
      } else {
        out.append('%').append(Hex.of(2, c));
      }
    }
    return out.toString();
  }
}
