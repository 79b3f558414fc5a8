package org.halflight.cli;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.bench.DiscEdges;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.session.SessionInput;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;

/** The profile that a disc is read with: used where it is the rig's, believed where it fits. */
final class DiscProfile {
  private final Surroundings surroundings;
  private final ProfileOptions options;
  private Optional<RigProfile> profile = Optional.empty();
  private OptionalInt mostDays = OptionalInt.empty();
  private Set<ProfileFit.Mismatch> mismatches = EnumSet.noneOf(ProfileFit.Mismatch.class);

  DiscProfile(Surroundings surroundings, ProfileOptions options) {
    this.surroundings = surroundings;
    this.options = options;
  }

  /** Looks for the profile of a rig. */
  void look(ProfiledRig rig) {
    Optional<SessionInput> input =
        options.live(surroundings).forRig(rig.serial(), Optional.of(surroundings.today()));
    if (input.isPresent() && input.get() instanceof SessionInput.ProfileInUse found) {
      profile = Optional.of(found.profile());
      mostDays = found.mostDays();
      mismatches = fit(rig, OptionalDouble.empty());
    }
  }

  /** The profile that edges are corrected by. */
  Optional<RigProfile> used() {
    return mismatches.stream().anyMatch(ProfileFit.Mismatch::forbidsUse)
        ? Optional.empty()
        : profile;
  }

  /** What is known of the rig in the light of a disc. */
  RigKnowledge knowledge(DiscEdges edges) {
    if (profile.isPresent()) {
      mismatches = fit(edges.rig(), OptionalDouble.of(edges.light().fullCounts()));
    }
    return profile.isPresent() && mismatches.isEmpty()
        ? RigKnowledge.of(profile.get())
        : RigKnowledge.UNCALIBRATED;
  }

  private Set<ProfileFit.Mismatch> fit(ProfiledRig rig, OptionalDouble fullCounts) {
    return ProfileFit.of(profile.orElseThrow(), rig, surroundings.today(), fullCounts, mostDays);
  }

  /** What profile is used, and why it may not count. */
  String said() {
    if (mismatches.isEmpty()) {
      return used()
          .map(found -> Words.say("disc.profile.used", found.date()))
          .orElseGet(() -> Words.say("disc.profile.none"));
    }
    return ProfileWords.mismatch(profile, mismatches.iterator().next());
  }
}
