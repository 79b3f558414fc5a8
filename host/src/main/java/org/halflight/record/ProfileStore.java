package org.halflight.record;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.halflight.files.FileNames;
import org.halflight.files.OutFile;
import org.halflight.files.Placing;
import org.halflight.files.PrivateFiles;
import org.halflight.files.Reasons;
import org.halflight.profile.ProfileFile;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.RigProfile;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;

/**
 * The profiles to measure with, of all rigs, as text files in a folder of their own, one a rig and
 * day; those of before stay. Each carries a check sum, so that an edited one is refused. What a
 * session was measured with goes by its session file into the record.
 */
public final class ProfileStore {
  private static final String ENDING = ".profile";
  private static final String ASIDE = ".aside";

  private final Path folder;

  /**
   * @param dataFolder where the record is by default
   */
  public ProfileStore(Path dataFolder) {
    folder = dataFolder.resolve("profiles");
  }

  /**
   * Keeps a profile; one of the same rig and day is replaced.
   *
   * @return where it is
   * @throws Trouble when it cannot be written
   */
  public Path keep(RigProfile profile) {
    Path file = fileOf(profile);
    try {
      PrivateFiles.makeFolder(folder);
      Placing.replace(file, bytes(profile));
    } catch (IOException e) {
      throw new Trouble(Words.say("profile.unwritable", file, Reasons.of(e)), e);
    }
    return file;
  }

  /**
   * Sets the file of a profile aside that was kept by mistake: it stays, and is not found any more.
   *
   * @throws Trouble when it cannot be moved
   */
  public void setAside(RigProfile profile) {
    Path file = fileOf(profile);
    try {
      if (Files.exists(file)) {
        Files.move(
            file,
            file.resolveSibling(file.getFileName() + ASIDE),
            StandardCopyOption.REPLACE_EXISTING);
      }
    } catch (IOException e) {
      throw new Trouble(Words.say("profile.unwritable", file, Reasons.of(e)), e);
    }
  }

  private Path fileOf(RigProfile profile) {
    return folder.resolve(name(profile.rig().serial()) + '_' + profile.date() + ENDING);
  }

  /**
   * The newest profile of a rig.
   *
   * @throws Trouble when it was edited or cut
   */
  public Optional<RigProfile> newest(String serial) {
    return newestFile(serial).map(ProfileStore::read);
  }

  /**
   * What a session with a rig is to be told: the newest profile of it, or that the newest file is
   * not in order; empty where there is none.
   *
   * @param on the day on which it is used; empty where that is not known, and it is not too old
   * @param mostDays how old it may be
   */
  public Optional<SessionInput> inUse(String serial, Optional<LocalDate> on, OptionalInt mostDays) {
    return newestFile(serial)
        .map(
            file -> {
              ProfileFile.Outcome outcome = ProfileFile.read(text(file));
              if (outcome instanceof ProfileFile.Refused refused) {
                return new SessionInput.ProfileRefused(ProfileFit.of(refused.reason()));
              }
              RigProfile profile = ((ProfileFile.Read) outcome).profile();
              return new SessionInput.ProfileInUse(profile, on.orElse(profile.date()), mostDays);
            });
  }

  /** What a rig calls itself may be anything. */
  private static String name(String serial) {
    return FileNames.distinct(serial, "rig");
  }

  private Optional<Path> newestFile(String serial) {
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    // Earlier versions took the serial number as it stands.
    Pattern own =
        Pattern.compile(
            "(?:"
                + Pattern.quote(name(serial))
                + "|"
                + Pattern.quote(serial)
                + ")_(\\d{4}-\\d\\d-\\d\\d)"
                + Pattern.quote(ENDING));
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> own.matcher(file.getFileName().toString()).matches())
          .max(Comparator.comparing(file -> day(own, file)));
    } catch (IOException e) {
      throw new Trouble(Words.say("profile.unreadable", folder, Reasons.of(e)), e);
    }
  }

  private static String day(Pattern own, Path file) {
    Matcher name = own.matcher(file.getFileName().toString());
    return name.matches() ? name.group(1) : "";
  }

  /**
   * Reads a profile from any file.
   *
   * @throws Trouble when there is none, or it was edited or cut
   */
  public static RigProfile read(Path file) {
    ProfileFile.Outcome outcome = ProfileFile.read(text(file));
    if (outcome instanceof ProfileFile.Refused refused) {
      throw new Trouble(ProfileWords.refused(file.toString(), refused.reason()));
    }
    return ((ProfileFile.Read) outcome).profile();
  }

  private static String text(Path file) {
    try {
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new Trouble(Words.say("profile.unreadable", file, Reasons.of(e)), e);
    }
  }

  /** Writes a profile into any file. */
  public static void write(RigProfile profile, OutFile to) {
    to.write(bytes(profile));
  }

  private static byte[] bytes(RigProfile profile) {
    return ProfileFile.write(profile).getBytes(StandardCharsets.UTF_8);
  }
}
