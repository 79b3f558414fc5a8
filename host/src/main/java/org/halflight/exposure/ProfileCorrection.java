package org.halflight.exposure;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Takes out of a firing what the profile of its rig knows: the delay of each edge, the place where
 * the comparators really switch, and the rate of the clock. The lag of the front end is left in: a
 * slow symmetric ramp hardly feels it, and taking out what square pulses show would spoil it.
 *
 * <p>The edges as they were measured are not touched; this makes others.
 */
public final class ProfileCorrection {
  private final RigProfile profile;

  public ProfileCorrection(RigProfile profile) {
    this.profile = Objects.requireNonNull(profile);
  }

  /** The firing with each edge where its light crossed, in order of time. */
  public Firing firing(Firing measured, TickRate rate) {
    List<Edge> edges =
        measured.edges().stream()
            .map(edge -> crossing(edge, rate))
            .sorted(Comparator.comparingLong(Edge::ticks))
            .toList();
    return new Firing(edges, measured.damage());
  }

  private Edge crossing(Edge edge, TickRate rate) {
    EdgeDelays delays = profile.delays().get(edge.channel());
    if (delays == null) {
      return edge;
    }
    double late = edge.high() ? delays.riseSeconds() : delays.fallSeconds();
    return new Edge(edge.channel(), edge.high(), edge.ticks() - rate.ticks(late));
  }

  /** The levels at which the comparators switch, the middle between up and down. */
  public LightLevels levels(LightLevels readBack) {
    return new LightLevels(
        readBack.darkCounts(),
        readBack.fullCounts(),
        level(readBack.lowCounts(), Channel.CENTRE_LOW),
        level(readBack.highCounts(), Channel.CENTRE_HIGH));
  }

  private double level(double counts, Channel channel) {
    double offset =
        Optional.ofNullable(profile.tripPoints().get(channel))
            .map(ComparatorTrips::offsetCounts)
            .orElse(0.0);
    return Math.max(0, Math.min(LightLevels.FULL_SCALE_COUNTS, counts + offset));
  }

  /** How fast the board really counts. */
  public TickRate rate(TickRate nominal) {
    return profile.clock().map(clock -> clock.rate(nominal)).orElse(nominal);
  }

  /** The profile. */
  public RigProfile profile() {
    return profile;
  }
}
