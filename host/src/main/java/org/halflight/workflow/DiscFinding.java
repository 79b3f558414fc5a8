package org.halflight.workflow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.DiscEdges;
import org.halflight.calibration.DiscReading;
import org.halflight.profile.ClockRate;
import org.halflight.profile.RigProfile;
import org.halflight.trouble.Trouble;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.DiscWords;

/**
 * What a slotted disc says of a rig.
 *
 * @param edges that it was worked out from
 * @param reading the slots as the rig saw them
 * @param profile that they were corrected by
 * @param setup what is known of the disc
 */
public record DiscFinding(
    DiscEdges edges, DiscReading reading, DiscProfile profile, DiscSetup setup) {
  /**
   * Works edges out.
   *
   * @throws Trouble when they are not those of such a disc
   */
  public static DiscFinding of(DiscEdges edges, DiscProfile profile, DiscSetup setup) {
    DiscReading.Outcome outcome = edges.read(setup.disc(), profile.used(edges.rig()));
    if (outcome instanceof DiscReading.Failed failed) {
      throw new Trouble(DiscWords.trouble(failed.trouble()));
    }
    return new DiscFinding(edges, ((DiscReading.Found) outcome).reading(), profile, setup);
  }

  /** The disc against the rig. */
  public DiscComparison comparison() {
    return DiscComparison.of(reading, profile.knowledge(edges));
  }

  /** What came of it, in a few sentences. */
  public List<String> brief() {
    List<String> said = new ArrayList<>(DiscWords.brief(comparison()));
    said.add(profile.said(edges));
    clockSaid().ifPresent(said::add);
    return said;
  }

  /** What a known speed says of the rig's clock; empty where none is known. */
  public Optional<String> clockSaid() {
    return setup.turnsAMinute().isEmpty()
        ? Optional.empty()
        : Optional.of(
            DiscWords.clock(
                reading,
                setup.turnsAMinute().getAsDouble(),
                setup.speedPpm(),
                profile.used(edges.rig()).flatMap(RigProfile::clock)));
  }

  /** The rate of the rig's clock by a known speed; empty where none is known or it cannot be. */
  public Optional<ClockRate> clock() {
    return setup.turnsAMinute().isEmpty()
        ? Optional.empty()
        : reading.clock(setup.turnsAMinute().getAsDouble(), setup.speedPpm());
  }
}
