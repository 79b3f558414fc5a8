package org.halflight.wire;

import java.util.Locale;

/** Lines of a rig, written from docs/protocol.md alone and not with the classes that read them. */
final class WireText {
  private WireText() {}

  /** A line with its CRC. */
  static String line(String body) {
    return body + "#" + String.format(Locale.ROOT, "%04X", crc(body));
  }

  static String body(String line) {
    return line.substring(0, line.indexOf('#'));
  }

  /** CRC-16/IBM-3740: polynomial 1021, start value FFFF, nothing reflected. */
  private static int crc(String body) {
    int crc = 0xFFFF;
    for (int i = 0; i < body.length(); i++) {
      crc ^= body.charAt(i) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) != 0 ? (crc << 1) ^ 0x1021 : crc << 1;
        crc &= 0xFFFF;
      }
    }
    return crc;
  }
}
