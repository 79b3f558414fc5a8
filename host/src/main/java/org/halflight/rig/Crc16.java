package org.halflight.rig;

import java.nio.charset.StandardCharsets;

/**
 * CRC-16/IBM-3740, often called CCITT-FALSE: polynomial 1021, start value FFFF, nothing reflected,
 * no final exclusive-or. Its check value over the nine digits {@code 123456789} is 29B1.
 *
 * <p>Without state; safe for use by several threads.
 */
public final class Crc16 {
  private static final int START = 0xFFFF;
  private static final int POLYNOMIAL = 0x1021;

  private Crc16() {}

  /** The CRC of a text, one byte a character; 0 to 65535. The CRC of nothing is FFFF. */
  public static int of(String text) {
    int crc = START;
    for (byte next : text.getBytes(StandardCharsets.ISO_8859_1)) {
      crc ^= (next & 0xFF) << 8;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 0x8000) != 0 ? (crc << 1) ^ POLYNOMIAL : crc << 1;
      }
      crc &= 0xFFFF;
    }
    return crc;
  }
}
