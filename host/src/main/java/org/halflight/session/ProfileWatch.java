package org.halflight.session;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.exposure.LightLevels;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.BoardTraits;

/** Which profile a session measures with: that of the rig on the bench, if it was told one. */
final class ProfileWatch {
  private final Map<String, SessionInput.ProfileInUse> told = new HashMap<>();
  private Optional<Mismatch> refused = Optional.empty();
  private String serial = "";
  private String kind = BoardTraits.Kind.WORDS.word(BoardTraits.Kind.FULL);
  private String firmware = "";
  private final Set<String> signalling = new HashSet<>();
  private final Set<String> checked = new HashSet<>();
  private final Map<String, Double> panelFalls = new HashMap<>();
  private final LiveClocks clocks = new LiveClocks();
  private ProfileUse said = ProfileUse.NONE;

  void onRigIdentified(SessionInput.RigIs rig) {
    serial = rig.serial();
    kind = BoardTraits.Kind.WORDS.word(rig.board().kind());
    firmware = rig.firmware();
  }

  /** A profile is there. A new one has nothing to do with what a check found of the old one. */
  void onProfile(SessionInput.ProfileInUse input) {
    String its = input.profile().rig().serial();
    SessionInput.ProfileInUse before = told.put(its, input);
    if (before != null && !before.profile().equals(input.profile())) {
      signalling.remove(its);
    }
    refused = Optional.empty();
  }

  /** The file of a profile is not in order. */
  void refuse(Mismatch why) {
    refused = Optional.of(why);
  }

  /** From here on without any profile. */
  void leaveOut() {
    told.clear();
    refused = Optional.empty();
  }

  void checked(SessionInput.RigChecked check) {
    checked.add(check.rigSerial());
    if (check.inControl()) {
      signalling.remove(check.rigSerial());
    } else {
      signalling.add(check.rigSerial());
    }
  }

  /** The panel of a rig was tested; counts for firings from here on. */
  void panelTested(String rigSerial, double fallBound) {
    panelFalls.put(rigSerial, fallBound);
  }

  /** What the pings say. */
  LiveClocks clocks() {
    return clocks;
  }

  /** Whether the rig has a profile that it may be checked against, and was not checked yet. */
  boolean isCheckDue() {
    SessionInput.ProfileInUse own = told.get(serial);
    return own != null && own.profile().rig().kind().equals(kind) && !checked.contains(serial);
  }

  /**
   * What is measured with now.
   *
   * @param light as it was set
   */
  ProfileUse use(Optional<LightLevels> light) {
    OptionalDouble fullCounts =
        light.isPresent() ? OptionalDouble.of(light.get().fullCounts()) : OptionalDouble.empty();
    ProfileUse use = calibration(fullCounts);
    return new ProfileUse(use.profile(), use.mismatches(), state(use, light));
  }

  private RigState state(ProfileUse use, Optional<LightLevels> light) {
    boolean known = use.profile().flatMap(RigProfile::clock).isPresent();
    return new RigState(
        known ? Optional.empty() : clocks.of(serial),
        checked.contains(serial),
        light.isPresent()
            ? OptionalDouble.of(light.get().fullCounts() - light.get().darkCounts())
            : OptionalDouble.empty(),
        panelFalls.containsKey(serial)
            ? OptionalDouble.of(panelFalls.get(serial))
            : OptionalDouble.empty());
  }

  private ProfileUse calibration(OptionalDouble fullCounts) {
    SessionInput.ProfileInUse own = told.get(serial);
    if (own != null) {
      RigProfile profile = own.profile();
      ProfiledRig rig =
          new ProfiledRig(serial, kind, firmware.isEmpty() ? profile.rig().firmware() : firmware);
      Set<Mismatch> found = ProfileFit.of(profile, rig, own.on(), fullCounts, own.mostDays());
      if (signalling.contains(serial)) {
        found.add(Mismatch.CHECK_SIGNAL);
      }
      // A board that was rewired is the same clock before another front end.
      return new ProfileUse(
          found.contains(Mismatch.OTHER_KIND) ? profile.movedTo(rig) : Optional.of(profile), found);
    }
    if (serial.isEmpty()) {
      return ProfileUse.NONE;
    }
    Optional<Mismatch> why =
        refused.or(() -> told.isEmpty() ? Optional.empty() : Optional.of(Mismatch.OTHER_RIG));
    return why.map(each -> new ProfileUse(Optional.empty(), Set.of(each))).orElse(ProfileUse.NONE);
  }

  /** What is to be said because it is otherwise now than what was said last. */
  Optional<ProfileUse> news(Optional<LightLevels> light) {
    ProfileUse now = use(light).calibration();
    if (now.equals(said)) {
      return Optional.empty();
    }
    said = now;
    return Optional.of(now);
  }
}
