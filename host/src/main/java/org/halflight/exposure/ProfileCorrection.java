package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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
    this.profile = profile;
  }

  /**
   * The firing with each edge where its light crossed, in order of time. The edges of one channel
   * keep their order: of light that changes faster than the delays differ, nothing is left.
   */
  public Firing firing(Firing measured, TickRate rate) {
    Map<Channel, Long> last = new EnumMap<>(Channel.class);
    List<Edge> edges = new ArrayList<>();
    for (Edge edge : measured.edges()) {
      Edge crossing = crossing(edge, rate);
      long ticks = Math.max(crossing.ticks(), last.getOrDefault(edge.channel(), Long.MIN_VALUE));
      last.put(edge.channel(), ticks);
      edges.add(new Edge(edge.channel(), edge.high(), ticks));
    }
    edges.sort(Comparator.comparingLong(Edge::ticks));
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

  /**
   * Where the comparators switch. What was found when the light was set is newer than any profile,
   * and holds; the profile speaks only where the rig was not asked then. Never both.
   *
   * @param found when the light was set; {@link TripPoints#EXACT} where the rig was not asked
   */
  public TripPoints trips(TripPoints found) {
    return found.equals(TripPoints.EXACT)
        ? new TripPoints(trips(Channel.CENTRE_LOW), trips(Channel.CENTRE_HIGH))
        : found;
  }

  private ComparatorTrips trips(Channel channel) {
    return profile.tripPoints().getOrDefault(channel, ComparatorTrips.EXACT);
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
