package org.halflight.bench;

import java.util.List;
import java.util.Optional;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.DiscTrouble;
import org.halflight.calibration.PrintedDisc;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/**
 * What a rig said while a disc turned: all that a reading is worked out from, now or later.
 *
 * @param rig that stamped them
 * @param rate nominal rate of its clock
 * @param light and thresholds meanwhile
 * @param edges of the centre sensor, raw, in order of time
 */
public record DiscEdges(ProfiledRig rig, TickRate rate, LightLevels light, List<Edge> edges) {
  public DiscEdges {
    edges = List.copyOf(edges);
  }

  /**
   * Works the reading out.
   *
   * @param profile of the rig, by which edges and levels are corrected as in a session
   */
  public DiscReading.Outcome read(PrintedDisc disc, Optional<RigProfile> profile) {
    Optional<ProfileCorrection> correction = profile.map(ProfileCorrection::new);
    Optional<LevelCorrection> levels = trips(correction).correction(light);
    return levels.isPresent()
        ? DiscReading.of(disc, edges, rate, levels.get(), correction)
        : new DiscReading.Failed(new DiscTrouble.LevelsOff());
  }

  static TripPoints trips(Optional<ProfileCorrection> correction) {
    return correction.map(known -> known.trips(TripPoints.EXACT)).orElse(TripPoints.EXACT);
  }
}
