package org.halflight.profile;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Whether a profile belongs to what is on the bench. */
public final class ProfileFit {
  /** Full light this much outside the range that was tried is another light. */
  public static final double LIGHT_SLACK_SHARE = 0.1;

  /** What does not fit. */
  public enum Mismatch {
    /** Made with another rig: it must not be used. */
    OTHER_RIG,
    /** The rig's firmware is another one since: make it anew. */
    OTHER_FIRMWARE,
    /** Full light lies outside the light that was tried. */
    OTHER_LIGHT,
    /** Older than the person allows. */
    TOO_OLD;

    /** Whether the profile must not be used at all. */
    public boolean forbidsUse() {
      return this == OTHER_RIG;
    }
  }

  private ProfileFit() {}

  /**
   * @param rig what is on the bench
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
    if (!profile.rig().serial().equals(rig.serial()) || !profile.rig().kind().equals(rig.kind())) {
      found.add(Mismatch.OTHER_RIG);
    }
    if (!profile.rig().firmware().equals(rig.firmware())) {
      found.add(Mismatch.OTHER_FIRMWARE);
    }
    if (fullCounts.isPresent()
        && !profile.light().holds(fullCounts.getAsDouble(), LIGHT_SLACK_SHARE)) {
      found.add(Mismatch.OTHER_LIGHT);
    }
    if (most.isPresent() && ChronoUnit.DAYS.between(profile.date(), today) > most.getAsInt()) {
      found.add(Mismatch.TOO_OLD);
    }
    return found;
  }
}
