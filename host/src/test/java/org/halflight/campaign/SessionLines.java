package org.halflight.campaign;

import java.util.ArrayList;
import java.util.List;

/** Writes session files, as docs/file-formats.md has them. */
final class SessionLines {
  /** Of the form that is written today. */
  static final String HEADING = "halflight-session 1";

  /** The light is set such that the thresholds stand at the Gauss nodes. */
  static final String LIGHT = "light dark=20.0000 full=820.0000 low=189.0599 high=650.9401";

  private final List<String> lines = new ArrayList<>();

  SessionLines() {
    lines.add(HEADING);
  }

  /** A line from the rig. */
  SessionLines heard(long nanos, String text) {
    lines.add("R " + nanos + ' ' + escaped(text, true));
    return this;
  }

  /** A line to the rig. */
  SessionLines sent(long nanos, String text) {
    lines.add("S " + nanos + ' ' + escaped(text, true));
    return this;
  }

  /**
   * A mark.
   *
   * @param words its kind and its values, {@code NAME=VALUE}, escaped already
   */
  SessionLines mark(long nanos, String words) {
    lines.add("M " + nanos + ' ' + words);
    return this;
  }

  /** How every session begins. */
  SessionLines begins(String at, String name) {
    return mark(0, "begins version=0.1.0 at=" + at + " session=" + name);
  }

  List<String> lines() {
    return lines;
  }

  /** The whole file. */
  String text() {
    return String.join("\n", lines) + "\n";
  }

  /** A value of a mark. */
  static String value(String text) {
    return escaped(text, false);
  }

  private static String escaped(String text, boolean ofTheWire) {
    StringBuilder out = new StringBuilder(text.length());
    for (byte each : text.getBytes(java.nio.charset.StandardCharsets.UTF_8)) {
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
