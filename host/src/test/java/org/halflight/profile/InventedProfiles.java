package org.halflight.profile;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented profiles for tests. */
public final class InventedProfiles {
  private InventedProfiles() {}

  /** One that knows a rig, its date and its light, and corrects nothing. */
  public static RigProfile bare(ProfiledRig rig, LocalDate date, LightRange light) {
    return bare(rig, date, light, OptionalDouble.empty());
  }

  /** The same with the shortest pulse that its rig is trusted with, in seconds. */
  public static RigProfile bare(
      ProfiledRig rig,
      LocalDate date,
      LightRange light,
      OptionalDouble shortestTrustworthySeconds) {
    return new RigProfile(
        rig,
        date,
        light,
        Optional.empty(),
        Map.of(),
        Optional.empty(),
        Optional.empty(),
        Map.of(),
        Map.of(),
        shortestTrustworthySeconds);
  }
}
