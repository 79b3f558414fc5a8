package org.halflight.signal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

/**
 * The edges of a firing as it grows, by ticks, with what is asked of them at every edge kept beside
 * them: so an edge costs the same however long the firing is. For one thread.
 */
final class FiringUnderway {
  private final List<Edge> edges;
  private final Set<Firing.Damage> damage = EnumSet.noneOf(Firing.Damage.class);
  private OptionalLong lightTicks = OptionalLong.empty();
  private OptionalLong releaseTicks = OptionalLong.empty();
  private OptionalLong openSinceTicks = OptionalLong.empty();
  private boolean moreThanNoise;
  private int centreEdges;

  FiringUnderway() {
    this(new ArrayList<>());
  }

  private FiringUnderway(List<Edge> edges) {
    this.edges = edges;
  }

  FiringUnderway copy() {
    FiringUnderway copy = new FiringUnderway(new ArrayList<>(edges));
    copy.damage.addAll(damage);
    copy.lightTicks = lightTicks;
    copy.releaseTicks = releaseTicks;
    copy.openSinceTicks = openSinceTicks;
    copy.moreThanNoise = moreThanNoise;
    copy.centreEdges = centreEdges;
    return copy;
  }

  /** Adds an edge that is not earlier than those before it. */
  void add(Edge edge) {
    edges.add(edge);
    note(edge);
  }

  /** Adds an edge that belongs before others. */
  void addLate(Edge edge) {
    int at = edges.size();
    while (at > 0 && edges.get(at - 1).ticks() > edge.ticks()) {
      at--;
    }
    edges.add(at, edge);
    note(edge);
  }

  private void note(Edge edge) {
    Channel channel = edge.channel();
    if (channel.isLight()) {
      lightTicks = later(lightTicks, edge);
    }
    if (channel == Channel.RELEASE) {
      releaseTicks = later(releaseTicks, edge);
    }
    if (channel == Channel.CENTRE_LOW) {
      if (!edge.high()) {
        openSinceTicks = OptionalLong.empty();
      } else if (openSinceTicks.isEmpty()) {
        openSinceTicks = OptionalLong.of(edge.ticks());
      }
    }
    moreThanNoise |= channel != Channel.CLICK && channel != Channel.CONTACT;
    centreEdges += channel == Channel.CENTRE_LOW || channel == Channel.CENTRE_HIGH ? 1 : 0;
  }

  private static OptionalLong later(OptionalLong ticks, Edge edge) {
    return OptionalLong.of(Math.max(ticks.orElse(edge.ticks()), edge.ticks()));
  }

  boolean isEmpty() {
    return edges.isEmpty();
  }

  /** All edges so far. */
  List<Edge> edges() {
    return Collections.unmodifiableList(edges);
  }

  /** What is known to be wrong with them; may be added to. */
  Set<Firing.Damage> damage() {
    return damage;
  }

  long firstTicks() {
    return edges.get(0).ticks();
  }

  long lastTicks() {
    return edges.get(edges.size() - 1).ticks();
  }

  /** The last edge of a light channel. */
  OptionalLong lightTicks() {
    return lightTicks;
  }

  /** The last edge of the release. */
  OptionalLong releaseTicks() {
    return releaseTicks;
  }

  /** The rise of the low level that no fall has followed yet. */
  OptionalLong openSinceTicks() {
    return openSinceTicks;
  }

  /** Whether anything but sounds and the flash contact is in it. */
  boolean isMoreThanNoise() {
    return moreThanNoise;
  }

  /** Edges of both levels of the centre sensor. */
  int centreEdges() {
    return centreEdges;
  }
}
