package org.halflight.profile;

import java.time.LocalDate;

/**
 * What a profile is known by.
 *
 * @param serial serial number of its rig
 * @param date when it was made
 * @param checkSum of its text, eight hexadecimal digits
 */
public record ProfileId(String serial, LocalDate date, String checkSum) {
  public ProfileId {
    if (!checkSum.matches("[0-9A-F]{8}")) {
      throw new IllegalArgumentException("not a check sum: " + checkSum);
    }
  }

  /** Of a profile. */
  public static ProfileId of(RigProfile profile) {
    return new ProfileId(profile.rig().serial(), profile.date(), ProfileFile.checkSum(profile));
  }

  /** {@code R-0001/2025-03-09/1A2B3C4D}. */
  public String label() {
    return serial + '/' + date + '/' + checkSum;
  }
}
