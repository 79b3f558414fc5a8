package org.halflight.upload;

import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;

/**
 * A file of the kind that is called Intel HEX: lines of count, address, type, data and a checksum
 * that makes the sum of the line's bytes 0 (Intel, Hexadecimal Object File Format Specification,
 * revision A, 1988; from memory). Only the two types that a chip with 64 KB or less needs.
 */
final class IntelHex {
  private static final int DATA = 0;
  private static final int END = 1;

  /** Count, address, type and checksum. */
  private static final int BYTES_BESIDE_DATA = 5;

  private IntelHex() {}

  /**
   * The bytes from address 0 on, without a gap.
   *
   * @param bytesMost what the flash has room for
   * @return empty when the text is damaged, has a gap, or is too long
   */
  static Optional<byte[]> read(String text, int bytesMost) {
    byte[] bytes = new byte[bytesMost];
    int count = 0;
    boolean ended = false;
    for (String line : text.lines().toList()) {
      Optional<byte[]> record = record(line);
      if (ended || record.isEmpty()) {
        return Optional.empty();
      }
      byte[] its = record.get();
      int data = its.length - BYTES_BESIDE_DATA;
      int address = ((its[1] & 0xFF) << 8) | (its[2] & 0xFF);
      ended = its[3] == END;
      if (!ended && (its[3] != DATA || address != count || count + data > bytesMost)) {
        return Optional.empty();
      }
      if (!ended) {
        System.arraycopy(its, BYTES_BESIDE_DATA - 1, bytes, count, data);
        count += data;
      }
    }
    return ended && count > 0 ? Optional.of(Arrays.copyOf(bytes, count)) : Optional.empty();
  }

  /** The bytes of a line, its count and its checksum among them; empty when these are wrong. */
  private static Optional<byte[]> record(String line) {
    if (!line.matches(":([0-9A-Fa-f]{2}){5,}")) {
      return Optional.empty();
    }
    byte[] bytes = HexFormat.of().parseHex(line, 1, line.length());
    int sum = 0;
    for (byte one : bytes) {
      sum += one;
    }
    boolean good = (sum & 0xFF) == 0 && (bytes[0] & 0xFF) == bytes.length - BYTES_BESIDE_DATA;
    return good ? Optional.of(bytes) : Optional.empty();
  }
}
