package org.halflight.desk;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import org.halflight.desk.view.CriteriaForm;
import org.halflight.desk.view.StopsForm;
import org.halflight.files.Placing;
import org.halflight.files.PrivateFiles;
import org.halflight.profile.ProfileFit;
import org.halflight.session.Measurand;

/**
 * What the person likes, kept beside the record. It may get lost: then things are as usual.
 *
 * @param file where it is kept
 * @param dark light letters on a dark ground
 * @param sounds whether sounds are played
 * @param profileDays how many days old a rig profile may be to count as calibrated
 * @param criteria what the verdicts of the next camera's runs are about
 */
record DeskSettings(
    Path file, boolean dark, boolean sounds, int profileDays, CriteriaForm criteria) {
  DeskSettings(Path file, boolean dark, boolean sounds, int profileDays) {
    this(file, dark, sounds, profileDays, CriteriaForm.USUAL);
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
        criteria(kept));
  }

  private static int days(String text) {
    try {
      return Math.max(1, Integer.parseInt(text));
    } catch (NumberFormatException unset) {
      return ProfileFit.USUAL_MOST_DAYS;
    }
  }

  /** As it was typed: what cannot be read is not begun with, and the form of the run says why. */
  private static CriteriaForm criteria(Properties kept) {
    return new CriteriaForm(
        kept.getProperty("tolerance", ""),
        Measurand.WORDS.find(kept.getProperty("about", "")).orElse(Measurand.MEAN_OF_SETTING),
        Boolean.parseBoolean(kept.getProperty("until-decided", "false")),
        new StopsForm(
            kept.getProperty("stops", CriteriaForm.USUAL.stops().markings()),
            kept.getProperty("stop-tolerance", "")),
        kept.getProperty("linkage", ""),
        // A wire on the contact is looked at anew each time.
        false);
  }

  DeskSettings with(boolean nowDark, boolean nowSounds) {
    return new DeskSettings(file, nowDark, nowSounds, profileDays, criteria);
  }

  DeskSettings with(CriteriaForm nowCriteria) {
    return new DeskSettings(file, dark, sounds, profileDays, nowCriteria);
  }

  /** Keeps them, where the folder can be written to. */
  void keep() {
    Properties kept = new Properties();
    kept.setProperty("dark", String.valueOf(dark));
    kept.setProperty("sounds", String.valueOf(sounds));
    kept.setProperty("profile-days", String.valueOf(profileDays));
    kept.setProperty("tolerance", criteria.tolerance());
    if (criteria.measurand() == Measurand.ONE_EXPOSURE) {
      kept.setProperty("about", Measurand.WORDS.word(criteria.measurand()));
    }
    kept.setProperty("until-decided", String.valueOf(criteria.untilDecided()));
    kept.setProperty("stops", criteria.stops().markings());
    kept.setProperty("stop-tolerance", criteria.stops().tolerance());
    kept.setProperty("linkage", criteria.linkage());
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
