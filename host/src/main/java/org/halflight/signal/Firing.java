package org.halflight.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import org.halflight.stored.StoredWords;

/**
 * One release of the shutter as the rig saw it: all edges between two quiet times, in order of
 * time.
 *
 * @param edges at least one edge; put in order of ticks
 * @param damage what makes these edges untrustworthy as a record of the firing; empty when nothing
 *     does
 * @param knob what the contact at the wind knob did around the first light, in order of ticks; not
 *     among {@code edges}, so that it changes nothing of what the firing is known by and measured
 *     by
 */
public record Firing(List<Edge> edges, List<Damage> damage, List<Edge> knob) {
  /** Why the edges of a firing may not be all that happened. */
  public enum Damage {
    /** The board's queues were full: edges are missing. */
    EDGES_LOST,
    /** Lines from the rig were lost or damaged on the way while this firing was under way. */
    LINES_LOST,
    /** The rig started anew in the middle of the firing. */
    RIG_RESTARTED,
    /**
     * What the rig said cannot all be: a channel changed twice to the same level, its level in a
     * beat disagrees with its edges, or ticks do not fit those around them.
     */
    CONTRADICTION,
    /** The link was lost before the quiet time had passed. */
    LINK_LOST;

    /** As files store them. */
    public static final StoredWords<Damage> WORDS =
        StoredWords.of(
            Damage.class,
            damage ->
                switch (damage) {
                  case EDGES_LOST -> "edges-lost";
                  case LINES_LOST -> "lines-lost";
                  case RIG_RESTARTED -> "rig-restarted";
                  case CONTRADICTION -> "contradiction";
                  case LINK_LOST -> "link-lost";
                });
  }

  public Firing {
    edges = inOrder(edges);
    damage = List.copyOf(damage);
    knob = inOrder(knob);
    if (edges.isEmpty()) {
      throw new IllegalArgumentException("a firing has at least one edge");
    }
  }

  /** A firing near which the knob did not move, or of a rig that does not see it. */
  public Firing(List<Edge> edges, List<Damage> damage) {
    this(edges, damage, List.of());
  }

  /** Edges that came in disorder stay as they came where their ticks are equal. */
  private static List<Edge> inOrder(List<Edge> edges) {
    for (int i = 1; i < edges.size(); i++) {
      if (edges.get(i).ticks() < edges.get(i - 1).ticks()) {
        return edges.stream().sorted(Comparator.comparingLong(Edge::ticks)).toList();
      }
    }
    return List.copyOf(edges);
  }

  /** The same edges with one more reason not to trust them. */
  public Firing damagedBy(Damage more) {
    if (damage.contains(more)) {
      return this;
    }
    EnumSet<Damage> all = EnumSet.of(more);
    all.addAll(damage);
    return new Firing(edges, List.copyOf(all), knob);
  }

  /** The same firing with edges of the knob that it has not yet among those that it has. */
  public Firing withKnob(List<Edge> more) {
    if (knob.containsAll(more)) {
      return this;
    }
    List<Edge> all = new ArrayList<>(knob);
    more.stream().filter(edge -> !knob.contains(edge)).forEach(all::add);
    return new Firing(edges, damage, all);
  }

  /** Ticks of the first edge; with rig serial number and boot count the identity of the firing. */
  public long firstTicks() {
    return edges.get(0).ticks();
  }

  /** Ticks of the last edge. */
  public long lastTicks() {
    return edges.get(edges.size() - 1).ticks();
  }

  /** Whether anything but sounds and the flash contact is in it. */
  public boolean isMoreThanNoise() {
    return edges.stream()
        .anyMatch(edge -> edge.channel() != Channel.CLICK && edge.channel() != Channel.CONTACT);
  }

  /** The edges of one channel, by ticks. */
  public List<Edge> of(Channel channel) {
    return channel == Channel.KNOB
        ? knob
        : edges.stream().filter(edge -> edge.channel() == channel).toList();
  }
}
