package org.halflight.desk;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.halflight.files.Placing;
import org.halflight.files.PrivateFiles;
import org.halflight.profile.ProfileFit;
import org.halflight.session.RunOption;

/**
 * What the person likes, kept beside the record. It may get lost: then things are as usual.
 *
 * @param file where it is kept
 * @param dark light letters on a dark ground
 * @param sounds whether sounds are played
 * @param profileDays how many days old a rig profile may be to count as calibrated
 * @param options what the verdicts of the next camera's runs are about
 */
record DeskSettings(
    Path file, boolean dark, boolean sounds, int profileDays, Map<RunOption<?>, String> options) {
  /** A wire on the flash contact is looked at anew each time. */
  private static final List<RunOption<?>> KEPT =
      RunOption.CRITERIA.stream()
          .filter(option -> option.isOffered() && option != RunOption.CONTACT)
          .toList();

  /** What earlier versions wrote for an option that holds. */
  private static final String YES = "true";

  DeskSettings(Path file, boolean dark, boolean sounds, int profileDays) {
    this(file, dark, sounds, profileDays, Map.of());
  }

  /** The settings of a folder, or the usual ones. */
  static DeskSettings of(Path folder) {
    Path file = folder.resolve("settings.properties");
    Properties kept = new Properties();
    if (Files.exists(file)) {
      try (Reader reader = Files.newBufferedReader(file)) {
        kept.load(reader);
      } catch (IOException | IllegalArgumentException unreadable) {
        kept.clear();
      }
    }
    return new DeskSettings(
        file,
        Boolean.parseBoolean(kept.getProperty("dark", "false")),
        Boolean.parseBoolean(kept.getProperty("sounds", "true")),
        days(kept.getProperty("profile-days", "")),
        options(kept));
  }

  private static int days(String text) {
    try {
      return Math.max(1, Integer.parseInt(text));
    } catch (NumberFormatException unset) {
      return ProfileFit.USUAL_MOST_DAYS;
    }
  }

  /** As it was typed: what cannot be read is not begun with, and the form of the run says why. */
  private static Map<RunOption<?>, String> options(Properties kept) {
    Map<RunOption<?>, String> options = new LinkedHashMap<>();
    for (RunOption<?> option : KEPT) {
      String text = kept.getProperty(option.name(), "");
      boolean said = option.words().isEmpty() || option.words().contains(text);
      options.put(option, said ? text : text.equals(YES) ? option.words().get(0) : "");
    }
    return options;
  }

  DeskSettings with(boolean nowDark, boolean nowSounds) {
    return new DeskSettings(file, nowDark, nowSounds, profileDays, options);
  }

  DeskSettings with(Map<RunOption<?>, String> nowOptions) {
    Map<RunOption<?>, String> kept = new LinkedHashMap<>(nowOptions);
    kept.keySet().retainAll(KEPT);
    return new DeskSettings(file, dark, sounds, profileDays, kept);
  }

  /** Keeps them, where the folder can be written to. */
  void keep() {
    Properties kept = new Properties();
    kept.setProperty("dark", String.valueOf(dark));
    kept.setProperty("sounds", String.valueOf(sounds));
    kept.setProperty("profile-days", String.valueOf(profileDays));
    KEPT.forEach(option -> kept.setProperty(option.name(), options.getOrDefault(option, "")));
    try {
      PrivateFiles.makeFolderOf(file);
      StringWriter text = new StringWriter();
      kept.store(text, null);
      Placing.replace(file, text.toString().getBytes(StandardCharsets.UTF_8));
    } catch (IOException notKept) {
      // Nothing that was measured depends on it.
      return;
    }
  }
}
