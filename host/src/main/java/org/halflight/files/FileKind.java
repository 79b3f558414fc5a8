package org.halflight.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.halflight.words.Words;

/** What a file holds, by its first bytes. */
public enum FileKind {
  /** A table of this program: its first line holds nothing but headings. */
  TABLE(".csv"),
  /** Raw edges of a disc: nobody can take them again, so not even others of them replace them. */
  EDGES(".csv"),
  /** A picture (PNG). */
  PICTURE(".png"),
  /** A page to print (PDF). */
  PAGE(".pdf"),
  /** The profile of a rig. */
  PROFILE(".profile"),
  /** A session file. */
  SESSION(".session .session.kept .session.lock"),
  /** The record, a backup of it, or one of the files that belong to an open record. */
  RECORD(".sqlite .sqlite-wal .sqlite-shm .sqlite-journal .sqlite.lock"),
  /** Nothing at all. */
  EMPTY(""),
  /** Anything else. */
  OTHER("");

  /** Enough for the headings of every table. */
  private static final int LOOKED_AT_BYTES = 8192;

  private static final byte[] PICTURE_BEGINS = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

  private static final Pattern HEADING = Pattern.compile("[a-z0-9_]+");
  private static final String EDGES_BEGIN = "rig,kind,firmware,ticks_per_second,";

  /** Of names that are kept for such files, with spaces between; the usual one first. */
  private final String endings;

  FileKind(String endings) {
    this.endings = endings;
  }

  /**
   * What a file holds.
   *
   * @throws IOException when it cannot be read
   */
  static FileKind of(Path file) throws IOException {
    byte[] first;
    try (InputStream in = Files.newInputStream(file)) {
      first = in.readNBytes(LOOKED_AT_BYTES);
    }
    String text = new String(first, StandardCharsets.ISO_8859_1);
    if (first.length == 0) {
      return EMPTY;
    }
    if (Arrays.equals(first, 0, Math.min(8, first.length), PICTURE_BEGINS, 0, 8)) {
      return PICTURE;
    }
    if (text.startsWith("%PDF-")) {
      return PAGE;
    }
    if (text.startsWith("SQLite format 3\0")) {
      return RECORD;
    }
    if (text.startsWith("halflight-session ")) {
      return SESSION;
    }
    if (text.startsWith("halflight rig profile ")) {
      return PROFILE;
    }
    String headings = headings(text);
    if (headings.startsWith(EDGES_BEGIN)) {
      return EDGES;
    }
    return isHeadings(headings) ? TABLE : OTHER;
  }

  /** The first line of a table, with a comma between headings and without quotes. */
  static String headings(Path table) throws IOException {
    try (InputStream in = Files.newInputStream(table)) {
      return headings(new String(in.readNBytes(LOOKED_AT_BYTES), StandardCharsets.ISO_8859_1));
    }
  }

  private static String headings(String text) {
    int end = text.indexOf('\n');
    return (end < 0 ? text : text.substring(0, end)).replace("\"", "").strip();
  }

  private static boolean isHeadings(String line) {
    String[] each = line.split(",", -1);
    return each.length > 1 && Arrays.stream(each).allMatch(h -> HEADING.matcher(h).matches());
  }

  /** The kind that the end of a name is kept for; empty where it says nothing. */
  static Optional<FileKind> keptName(Path file) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(kind -> kind == SESSION || kind == RECORD || kind == PROFILE)
        .filter(kind -> Arrays.stream(kind.endings.split(" ", -1)).anyMatch(name::endsWith))
        .findFirst();
  }

  /** Its usual ending, such as {@code .csv}. */
  String ending() {
    return endings.split(" ", -1)[0];
  }

  /** What it is called in a sentence, with its article. */
  String spoken() {
    return Words.of("file.kind", this);
  }
}
