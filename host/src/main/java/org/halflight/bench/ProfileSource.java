package org.halflight.bench;

import java.time.LocalDate;
import java.util.Optional;
import org.halflight.session.SessionInput;

/** Where a session gets the profile of the rig that it meets. */
@FunctionalInterface
public interface ProfileSource {
  /** There are none. */
  ProfileSource NONE = (serial, on) -> Optional.empty();

  /**
   * What the session is to be told about a rig: that a profile is in use, that the one that is
   * there must not be used, that none is to be used. Empty to leave it as it is.
   *
   * @param serial serial number of the rig
   * @param on the day on which it is used; empty where nothing tells it, and nothing is too old
   */
  Optional<SessionInput> forRig(String serial, Optional<LocalDate> on);
}
