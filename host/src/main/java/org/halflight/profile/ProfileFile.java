package org.halflight.profile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * A profile as a text file that a person can read: a title line, then {@code name = value}, then a
 * check sum over all before it (CRC-32 of the JDK over two bytes a character, high one first), so
 * that a file that was edited or cut is refused. docs/file-formats.md lists the names.
 */
public final class ProfileFile {
  /** What the first line says. */
  public static final String TITLE = "halflight rig profile";

  /** The form that this program writes. */
  public static final int FORM = 1;

  private static final String CHECK_SUM = "check-sum";

  /** What a text comes to. */
  public sealed interface Outcome {}

  /** A profile. */
  public record Read(RigProfile profile) implements Outcome {}

  /** None, and why. */
  public record Refused(Reason reason) implements Outcome {}

  /** Why a text is no profile. */
  public enum Reason {
    /** Its first line is not that of a profile. */
    NO_PROFILE,
    /** Written by a later version in a form unknown to this one. */
    LATER_FORM,
    /** The check sum is not there: the end is missing. */
    CUT,
    /** The check sum does not fit: it was edited. */
    EDITED,
    /** The check sum fits, and the values make no profile. */
    VALUES
  }

  private ProfileFile() {}

  /** Writes a profile. */
  public static String write(RigProfile profile) {
    StringBuilder text = new StringBuilder(TITLE + ' ' + FORM + '\n');
    ProfileValues.of(profile)
        .forEach((name, value) -> text.append(name).append(" = ").append(value).append('\n'));
    return text + CHECK_SUM + " = " + sum(text.toString()) + '\n';
  }

  /** The check sum of a profile as it is written: eight hexadecimal digits. */
  public static String checkSum(RigProfile profile) {
    String text = write(profile).strip();
    return text.substring(text.length() - 8);
  }

  /** Reads a text. Line ends of any system are accepted. */
  public static Outcome read(String text) {
    List<String> lines = new ArrayList<>(text.lines().map(String::strip).toList());
    while (!lines.isEmpty() && lines.get(lines.size() - 1).isEmpty()) {
      lines.remove(lines.size() - 1);
    }
    if (lines.isEmpty() || !lines.get(0).startsWith(TITLE + ' ')) {
      return new Refused(Reason.NO_PROFILE);
    }
    if (!lines.get(0).equals(TITLE + ' ' + FORM)) {
      return new Refused(Reason.LATER_FORM);
    }
    String last = lines.get(lines.size() - 1);
    if (!last.matches(CHECK_SUM + " = [0-9A-F]{8}")) {
      return new Refused(Reason.CUT);
    }
    List<String> before = lines.subList(0, lines.size() - 1);
    if (!last.endsWith(sum(String.join("\n", before) + '\n'))) {
      return new Refused(Reason.EDITED);
    }
    Map<String, String> values = new LinkedHashMap<>();
    for (String line : before.subList(1, before.size())) {
      int at = line.indexOf(" = ");
      if (at < 1) {
        return new Refused(Reason.VALUES);
      }
      values.put(line.substring(0, at), line.substring(at + 3));
    }
    return ProfileValues.profile(values)
        .<Outcome>map(Read::new)
        .orElseGet(() -> new Refused(Reason.VALUES));
  }

  private static String sum(String text) {
    CRC32 crc = new CRC32();
    // Two bytes a character, so that no encoding has a say.
    text.chars()
        .forEach(
            character -> {
              crc.update(character >> 8);
              crc.update(character & 0xFF);
            });
    return String.format(Locale.ROOT, "%08X", crc.getValue());
  }
}
