package org.halflight.workflow;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.bench.DiscEdges;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;

/**
 * The profile that a disc is read with: used where it is the rig's, believed where it fits.
 *
 * @param profile of the rig on the bench; empty where there is none or none is wanted
 * @param today the day on which it is used
 * @param mostDays how many days old it may be, where the person set a limit
 */
public record DiscProfile(Optional<RigProfile> profile, LocalDate today, OptionalInt mostDays) {
  /** The profile that edges of a rig are corrected by. */
  public Optional<RigProfile> used(ProfiledRig rig) {
    boolean forbidden =
        mismatches(rig, OptionalDouble.empty()).stream().anyMatch(ProfileFit.Mismatch::forbidsUse);
    return forbidden ? Optional.empty() : profile;
  }

  /** What is known of the rig in the light of a disc. */
  public RigKnowledge knowledge(DiscEdges edges) {
    return profile.isPresent() && mismatches(edges).isEmpty()
        ? RigKnowledge.of(
            profile.get(),
            OptionalDouble.of(edges.light().fullCounts() - edges.light().darkCounts()))
        : RigKnowledge.UNCALIBRATED;
  }

  /** What profile is used, and why it may not count. */
  public String said(DiscEdges edges) {
    return mismatches(edges).stream()
        .findFirst()
        .map(why -> ProfileWords.mismatch(profile, why))
        .orElseGet(
            () ->
                profile
                    .map(found -> Words.say("disc.profile.used", found.date()))
                    .orElseGet(() -> Words.say("disc.profile.none")));
  }

  private Set<ProfileFit.Mismatch> mismatches(DiscEdges edges) {
    return mismatches(edges.rig(), OptionalDouble.of(edges.light().fullCounts()));
  }

  private Set<ProfileFit.Mismatch> mismatches(ProfiledRig rig, OptionalDouble fullCounts) {
    return profile
        .map(known -> ProfileFit.of(known, rig, today, fullCounts, mostDays))
        .orElseGet(() -> EnumSet.noneOf(ProfileFit.Mismatch.class));
  }
}
