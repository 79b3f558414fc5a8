package org.halflight.session;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.halflight.exposure.CurtainMethod;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ProfileFit.Mismatch;
import org.halflight.profile.ProfileId;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * The profile that a firing is measured with, and why it does not count as calibrated all the same,
 * where there is a reason. Nothing is lost by a reason: the times stay as they are worked out.
 *
 * @param profile what is corrected by; empty where there is none or it must not be used
 * @param mismatches why the times do not count as calibrated; in order of their kind
 * @param state how the rig stood beside that
 */
public record ProfileUse(Optional<RigProfile> profile, Set<Mismatch> mismatches, RigState state) {
  /** A resonator drifts by about 10 ppm a degree; a bench swings by 5 degrees. */
  private static final double CLOCK_DRIFT_BOUND = 50e-6;

  /** No profile at all. */
  public static final ProfileUse NONE = new ProfileUse(Optional.empty(), Set.of());

  public ProfileUse {
    mismatches =
        mismatches.stream()
            .sorted()
            .collect(
                Collectors.collectingAndThen(
                    Collectors.toCollection(java.util.LinkedHashSet::new),
                    java.util.Collections::unmodifiableSet));
  }

  /** Without knowing how the rig stood. */
  public ProfileUse(Optional<RigProfile> profile, Set<Mismatch> mismatches) {
    this(profile, mismatches, RigState.UNKNOWN);
  }

  /** The profile and the reasons alone, which many firings have in common. */
  public ProfileUse calibration() {
    return new ProfileUse(profile, mismatches);
  }

  /** Whether what is measured with it counts as calibrated. */
  public boolean isCalibrated() {
    return profile.isPresent() && mismatches.isEmpty();
  }

  /** What the profile is known by. */
  public Optional<ProfileId> id() {
    return profile.map(ProfileId::of);
  }

  /** The firing with each edge where its light crossed. */
  public Firing crossings(Firing raw, TickRate nominal) {
    return correction().map(c -> c.firing(raw, nominal)).orElse(raw);
  }

  /** How fast the board really counts: by the profile, or else by the pings of the session. */
  public TickRate rate(TickRate nominal) {
    return clock().map(clock -> clock.rate(nominal)).orElse(nominal);
  }

  /** What that rate may be off by, as a share. */
  public double clockBoundShare() {
    return clock()
        .map(its -> Math.sqrt(3) * its.standardUncertaintyPpm() * 1e-6 + CLOCK_DRIFT_BOUND)
        .orElse(CurtainMethod.CLOCK_SHARE);
  }

  /** The rate that times are worked out with; only ever one of the two. */
  private Optional<ClockRate> clock() {
    return profile.flatMap(RigProfile::clock).or(state::liveClock);
  }

  /** Where the comparators switch; see {@link ProfileCorrection#trips(TripPoints)}. */
  public TripPoints trips(TripPoints found) {
    return correction().map(c -> c.trips(found)).orElse(found);
  }

  private Optional<ProfileCorrection> correction() {
    return profile.map(ProfileCorrection::new);
  }

  /** The same with one more reason. */
  ProfileUse with(Mismatch more) {
    Set<Mismatch> all = EnumSet.of(more);
    all.addAll(mismatches);
    return new ProfileUse(profile, all, state);
  }
}
