package org.halflight.session;

import java.util.Optional;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.OuterSensors;

/**
 * What the figures of a firing were worked out with.
 *
 * @param levels empty where full-open light was not known, and the thresholds were taken to be
 *     where they should
 * @param oneLevel how a rig of one level saw it; empty with a rig of two
 * @param profileUse the profile of the rig
 * @param outer what was known of the outer sensors; of no matter for blades
 */
public record MeasuredWith(
    Optional<LevelPair> levels,
    Optional<OneLevel> oneLevel,
    ProfileUse profileUse,
    OuterSensors outer) {
  /** Of blades. */
  public MeasuredWith(
      Optional<LevelPair> levels, Optional<OneLevel> oneLevel, ProfileUse profileUse) {
    this(levels, oneLevel, profileUse, OuterSensors.UNKNOWN);
  }

  /** The same with what is known of the other level of a rig of one. */
  MeasuredWith seen(OneLevel now) {
    return new MeasuredWith(levels, Optional.of(now), profileUse, outer);
  }

  /** The same with more of the outer sensors known. */
  MeasuredWith sensing(OuterSensors now) {
    return new MeasuredWith(levels, oneLevel, profileUse, now);
  }

  /** The same with another profile. */
  MeasuredWith by(ProfileUse use) {
    return new MeasuredWith(levels, oneLevel, use, outer);
  }
}
