package org.halflight.profile;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.stored.StoredWords;

/** Whether a profile belongs to what is on the bench, and whether its figures hold there. */
public final class ProfileFit {
  /** How many days old a profile may be, where the person set no limit. Our choice. */
  public static final int USUAL_MOST_DAYS = 90;

  /** Full light this much outside the range that was tried is another light. */
  public static final double LIGHT_SLACK_SHARE = 0.1;

  /** Why what is measured does not count as calibrated although there is a profile. */
  public enum Mismatch {
    /** Made with another rig: it must not be used. */
    OTHER_RIG,
    /** Made when the board was another kind of rig: only its clock is what it was. */
    OTHER_KIND,
    /** The rig's firmware is another one since: make it anew. */
    OTHER_FIRMWARE,
    /** Full light lies outside the light that was tried. */
    OTHER_LIGHT,
    /** Older than the person allows. */
    TOO_OLD,
    /** The rig check found the rig otherwise than its profile. */
    CHECK_SIGNAL,
    /** The file of the profile was changed after it was written: it is not used. */
    FILE_EDITED,
    /** The end of the file of the profile is missing: it is not used. */
    FILE_CUT,
    /** The file is no profile that this program can read: it is not used. */
    FILE_UNREADABLE;

    /** As files store them. */
    public static final StoredWords<Mismatch> WORDS =
        StoredWords.of(
            Mismatch.class,
            mismatch ->
                switch (mismatch) {
                  case OTHER_RIG -> "other-rig";
                  case OTHER_KIND -> "other-kind";
                  case OTHER_FIRMWARE -> "other-firmware";
                  case OTHER_LIGHT -> "other-light";
                  case TOO_OLD -> "too-old";
                  case CHECK_SIGNAL -> "check-signal";
                  case FILE_EDITED -> "file-edited";
                  case FILE_CUT -> "file-cut";
                  case FILE_UNREADABLE -> "file-unreadable";
                });

    /** Whether the profile must not be used as it is. */
    public boolean forbidsUse() {
      return this == OTHER_RIG
          || this == OTHER_KIND
          || this == FILE_EDITED
          || this == FILE_CUT
          || this == FILE_UNREADABLE;
    }
  }

  private ProfileFit() {}

  /** What a text that is no profile means for what is measured. */
  public static Mismatch of(ProfileFile.Reason reason) {
    return switch (reason) {
      case EDITED -> Mismatch.FILE_EDITED;
      case CUT -> Mismatch.FILE_CUT;
      case NO_PROFILE, LATER_FORM, VALUES -> Mismatch.FILE_UNREADABLE;
    };
  }

  /**
   * @param rig what is on the bench
   * @param today the day on which it is used; of a session of long ago, the day of that
   * @param fullCounts full light, where it was set
   * @param most how many days old a profile may be, where the person set a limit
   */
  public static Set<Mismatch> of(
      RigProfile profile,
      ProfiledRig rig,
      LocalDate today,
      OptionalDouble fullCounts,
      OptionalInt most) {
    Set<Mismatch> found = EnumSet.noneOf(Mismatch.class);
    boolean own = profile.rig().serial().equals(rig.serial());
    if (!own) {
      found.add(Mismatch.OTHER_RIG);
    }
    if (own && !profile.rig().kind().equals(rig.kind())) {
      // What belongs to the front end and its firmware is said by that alone.
      return EnumSet.of(Mismatch.OTHER_KIND);
    }
    if (!profile.rig().firmware().equals(rig.firmware())) {
      found.add(Mismatch.OTHER_FIRMWARE);
    }
    if (fullCounts.isPresent()
        && !profile.light().holds(fullCounts.getAsDouble(), LIGHT_SLACK_SHARE)) {
      found.add(Mismatch.OTHER_LIGHT);
    }
    if (most.isPresent()
        && Math.abs(ChronoUnit.DAYS.between(profile.date(), today)) > most.getAsInt()) {
      found.add(Mismatch.TOO_OLD);
    }
    return found;
  }
}
