package org.halflight.photo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a camera wrote into a picture: how it was held, and when. From the TIFF structure of Exif
 * (CIPA DC-008, Exif 2.32). Whatever is damaged there is left out.
 *
 * @param orientation 1 for upright, to 8 as in Exif
 * @param takenAt by the camera's clock
 * @param offset of that clock from UTC, where the camera says so
 */
record ExifTags(int orientation, Optional<LocalDateTime> takenAt, Optional<ZoneOffset> offset) {
  static final ExifTags NONE = new ExifTags(1, Optional.empty(), Optional.empty());

  private static final int ORIENTATION = 0x0112;
  private static final int CHANGED = 0x0132;
  private static final int EXIF_DIRECTORY = 0x8769;
  private static final int TAKEN = 0x9003;
  private static final int DIGITIZED = 0x9004;
  private static final int OFFSET_TAKEN = 0x9011;
  private static final int ASCII = 2;
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int ENTRY_BYTES = 12;
  private static final int MOST_ENTRIES = 500;
  private static final DateTimeFormatter WRITTEN =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);

  /** From the TIFF structure, its first byte first. */
  static ExifTags of(byte[] tiff) {
    if (tiff.length < 8) {
      return NONE;
    }
    ByteBuffer bytes =
        ByteBuffer.wrap(tiff)
            .order(tiff[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    Map<Integer, String> found = new HashMap<>();
    directory(bytes, bytes.getInt(4), found);
    directory(bytes, number(found, EXIF_DIRECTORY), found);
    int orientation = number(found, ORIENTATION);
    return new ExifTags(
        orientation >= 1 && orientation <= 8 ? orientation : 1,
        time(found, TAKEN).or(() -> time(found, DIGITIZED)).or(() -> time(found, CHANGED)),
        offset(found.getOrDefault(OFFSET_TAKEN, "")));
  }

  /** A number; -1 where there is none. */
  private static int number(Map<Integer, String> found, int tag) {
    String digits = found.getOrDefault(tag, "");
    return digits.matches("\\d{1,9}") ? Integer.parseInt(digits) : -1;
  }

  private static void directory(ByteBuffer bytes, int at, Map<Integer, String> found) {
    if (at < 0 || at > bytes.limit() - 2) {
      return;
    }
    int entries = Math.min(bytes.getShort(at) & 0xffff, MOST_ENTRIES);
    for (int i = 0; i < entries; i++) {
      int entry = at + 2 + i * ENTRY_BYTES;
      if (entry > bytes.limit() - ENTRY_BYTES) {
        return;
      }
      int tag = bytes.getShort(entry) & 0xffff;
      value(bytes, entry).ifPresent(value -> found.putIfAbsent(tag, value));
    }
  }

  private static Optional<String> value(ByteBuffer bytes, int entry) {
    int type = bytes.getShort(entry + 2);
    long count = bytes.getInt(entry + 4) & 0xffffffffL;
    if (type == SHORT && count == 1) {
      return Optional.of(String.valueOf(bytes.getShort(entry + 8) & 0xffff));
    }
    if (type == LONG && count == 1) {
      int number = bytes.getInt(entry + 8);
      return number < 0 ? Optional.empty() : Optional.of(String.valueOf(number));
    }
    if (type != ASCII) {
      return Optional.empty();
    }
    long from = count <= 4 ? entry + 8 : bytes.getInt(entry + 8) & 0xffffffffL;
    if (from + count > bytes.limit()) {
      return Optional.empty();
    }
    byte[] text = new byte[(int) count];
    bytes.get((int) from, text);
    return Optional.of(new String(text, StandardCharsets.US_ASCII).replace("\0", "").strip());
  }

  private static Optional<LocalDateTime> time(Map<Integer, String> found, int tag) {
    try {
      return Optional.of(LocalDateTime.parse(found.getOrDefault(tag, ""), WRITTEN));
    } catch (DateTimeException blank) {
      return Optional.empty();
    }
  }

  private static Optional<ZoneOffset> offset(String written) {
    try {
      return written.isEmpty() ? Optional.empty() : Optional.of(ZoneOffset.of(written));
    } catch (DateTimeException blank) {
      return Optional.empty();
    }
  }
}
