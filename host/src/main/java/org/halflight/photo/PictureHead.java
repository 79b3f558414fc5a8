package org.halflight.photo;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;

/**
 * What the first bytes of a picture say; nothing is unpacked.
 *
 * @param kind by its bytes, whatever its name
 * @param width in pixels, before it is turned upright; 0 where the kind is not shown
 * @param height the same
 * @param isInWaves whether it must be unpacked whole to show any of it (progressive JPEG)
 * @param exif what the camera wrote
 */
public record PictureHead(Kind kind, int width, int height, boolean isInWaves, ExifTags exif) {
  /** Kinds of pictures that phones and cameras make. */
  public enum Kind {
    JPEG,
    PNG,
    /** Kept, and not shown. */
    OTHER
  }

  private static final int FIRST_BYTES = 16;
  private static final int LONGEST_EXIF = 1 << 20;
  private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
  private static final byte[] EXIF = {'E', 'x', 'i', 'f', 0, 0};

  /** Brands of ISO/IEC 23008-12 and AVIF; other brands are films. */
  private static final Set<String> STILL =
      Set.of("heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif", "avis");

  /** Markers of a JPEG frame without those of tables (ITU-T T.81, table B.1). */
  private static boolean isFrame(int marker) {
    return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
  }

  /**
   * Reads the head of a file.
   *
   * @return empty for what is no picture
   * @throws IOException when the file cannot be read
   */
  public static Optional<PictureHead> read(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      return read(in);
    }
  }

  static Optional<PictureHead> read(InputStream stream) throws IOException {
    stream.mark(FIRST_BYTES);
    byte[] first = stream.readNBytes(FIRST_BYTES);
    stream.reset();
    DataInputStream in = new DataInputStream(stream);
    try {
      if (first.length > 2 && (first[0] & 0xff) == 0xff && (first[1] & 0xff) == 0xd8) {
        return jpeg(in);
      }
      if (first.length >= PNG.length && Arrays.equals(Arrays.copyOf(first, PNG.length), PNG)) {
        return png(in);
      }
    } catch (EOFException breaksOff) {
      return Optional.empty();
    }
    return isOther(new String(first, StandardCharsets.ISO_8859_1))
        ? Optional.of(new PictureHead(Kind.OTHER, 0, 0, false, ExifTags.NONE))
        : Optional.empty();
  }

  private static boolean isOther(String first) {
    return first.startsWith("GIF8")
        || first.startsWith("II*\0")
        || first.startsWith("MM\0*")
        || (first.startsWith("RIFF") && first.startsWith("WEBP", 8))
        || (first.startsWith("ftyp", 4)
            && first.length() >= 12
            && STILL.contains(first.substring(8, 12)));
  }

  private static Optional<PictureHead> jpeg(DataInputStream in) throws IOException {
    in.skipNBytes(2);
    ExifTags exif = ExifTags.NONE;
    while (true) {
      int marker = in.readUnsignedByte();
      if (marker != 0xff) {
        return Optional.empty();
      }
      while (marker == 0xff) {
        marker = in.readUnsignedByte();
      }
      int length = in.readUnsignedShort() - 2;
      if (length < 0 || marker == 0xd9 || marker == 0xda) {
        return Optional.empty();
      }
      if (isFrame(marker)) {
        in.skipNBytes(1);
        int height = in.readUnsignedShort();
        int width = in.readUnsignedShort();
        return sized(Kind.JPEG, width, height, marker == 0xc2, exif);
      }
      if (marker == 0xe1) {
        byte[] segment = in.readNBytes(length);
        if (segment.length > EXIF.length
            && Arrays.equals(Arrays.copyOf(segment, EXIF.length), EXIF)) {
          exif = ExifTags.of(Arrays.copyOfRange(segment, EXIF.length, segment.length));
        }
      } else {
        in.skipNBytes(length);
      }
    }
  }

  private static Optional<PictureHead> png(DataInputStream in) throws IOException {
    in.skipNBytes(PNG.length);
    int width = 0;
    int height = 0;
    ExifTags exif = ExifTags.NONE;
    while (true) {
      long length = in.readInt() & 0xffffffffL;
      String chunk = new String(in.readNBytes(4), StandardCharsets.ISO_8859_1);
      if (chunk.equals("IDAT") || chunk.equals("IEND") || chunk.length() < 4) {
        return sized(Kind.PNG, width, height, false, exif);
      }
      if (chunk.equals("IHDR") && length >= 8) {
        width = in.readInt();
        height = in.readInt();
        length -= 8;
      } else if (chunk.equals("eXIf") && length < LONGEST_EXIF) {
        exif = ExifTags.of(in.readNBytes((int) length));
        length = 0;
      }
      in.skipNBytes(length + 4);
    }
  }

  private static Optional<PictureHead> sized(
      Kind kind, int width, int height, boolean inWaves, ExifTags exif) {
    return width > 0 && height > 0
        ? Optional.of(new PictureHead(kind, width, height, inWaves, exif))
        : Optional.empty();
  }

  /** How it is turned: 1 for upright, to 8 as in Exif. */
  public int orientation() {
    return exif.orientation();
  }

  public long pixels() {
    return (long) width * height;
  }

  /**
   * When it was taken by its own word; empty where it says nothing, or what cannot be: a clock that
   * was never set, or is ahead of ours by more than a quarter of an hour (our own limit).
   *
   * @param zone of a clock that does not name its own
   */
  public Optional<Instant> takenAt(ZoneId zone, Instant now) {
    return exif.takenAt()
        .filter(at -> !at.isBefore(CLOCK_NEVER_SET))
        .map(at -> exif.offset().map(at::toInstant).orElseGet(() -> at.atZone(zone).toInstant()))
        .filter(at -> !at.isAfter(now.plusSeconds(900)));
  }

  /** The first day of many a clock that nobody set is in 1970, 1980 or 2000. */
  private static final LocalDateTime CLOCK_NEVER_SET = LocalDateTime.of(2001, 1, 1, 0, 0);
}
