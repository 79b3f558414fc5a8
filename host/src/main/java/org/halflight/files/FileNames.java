package org.halflight.files;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Names of files that are made from what people typed or a rig said: plain on every system, and
 * never out of their folder.
 */
public final class FileNames {
  /** Longer ones are cut: with what is added around it a name must stay below 255 bytes. */
  static final int MOST_CHARACTERS = 60;

  /** Names of devices on Windows, whatever ending they bear. */
  private static final Set<String> DEVICES = Set.of("con", "prn", "aux", "nul", "conin", "conout");

  /** What no name may hold on Windows. */
  private static final Pattern REFUSED = Pattern.compile("[<>:\"/\\\\|?*\\p{Cntrl}]");

  private FileNames() {}

  /**
   * The plain part of a text: letters and digits of ASCII, underscores, and single hyphens in the
   * place of all else. Different texts may come to the same: whoever needs them apart adds a
   * number.
   *
   * @param instead for a text of which nothing is left; plain itself
   */
  public static String plain(String text, String instead) {
    String plain = text.replaceAll("[^A-Za-z0-9_]+", "-");
    plain = plain.substring(0, Math.min(plain.length(), MOST_CHARACTERS));
    plain = plain.replaceAll("^-|-$", "");
    if (plain.isEmpty()) {
      return instead;
    }
    return isDevice(plain) ? plain + "_" : plain;
  }

  /**
   * The same for texts that nothing else keeps apart: one that is not plain already ends in a check
   * sum of the whole text.
   */
  public static String distinct(String text, String instead) {
    String plain = plain(text, instead);
    if (plain.equals(text)) {
      return plain;
    }
    CRC32 crc = new CRC32();
    crc.update(text.getBytes(StandardCharsets.UTF_8));
    return plain + String.format(Locale.ROOT, "-%08x", crc.getValue());
  }

  /**
   * Refuses a name that a person typed where Windows would: the file may go there one day.
   *
   * @throws Trouble which says why, and what to do
   */
  public static void check(String name) {
    boolean isRefused =
        REFUSED.matcher(name).find()
            || name.endsWith(".")
            || name.endsWith(" ")
            || isDevice(name.replaceFirst("\\..*", ""));
    if (isRefused) {
      throw new Trouble(Words.say("file.badName", name));
    }
  }

  private static boolean isDevice(String plain) {
    String name = plain.toLowerCase(Locale.ROOT);
    return DEVICES.contains(name) || name.matches("(com|lpt)[0-9]");
  }
}
