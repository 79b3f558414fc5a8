package org.halflight.exposure;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.signal.Channel;

/**
 * What is known of the three sensors when the travel of curtains is measured. Both outer ones hang
 * on one comparator level, the middle of the two of the centre; each has its own light, so that
 * each switches at a level of its own.
 *
 * @param centreLightCounts full light less dark of the centre, in counts of the ten-bit converter;
 *     empty where it was not set
 * @param a where sensor A switches; empty where its light was not read
 * @param b where sensor B switches, likewise
 * @param seen which of the two are known to see light: by the light that was set, or by a firing
 * @param direction of travel, as far as it was learnt
 */
public record OuterSensors(
    OptionalDouble centreLightCounts,
    Optional<SensorLevel> a,
    Optional<SensorLevel> b,
    Set<Channel> seen,
    Optional<Direction> direction) {
  /** Nothing yet. */
  public static final OuterSensors UNKNOWN =
      new OuterSensors(
          OptionalDouble.empty(), Optional.empty(), Optional.empty(), Set.of(), Optional.empty());

  public OuterSensors {
    seen = Set.copyOf(seen);
  }

  /** Where an outer sensor switches; empty where its light was not read. */
  public Optional<SensorLevel> level(Channel channel) {
    return channel == Channel.OUTER_A ? a : b;
  }

  /** The same with more sensors that see light. */
  public OuterSensors seeing(Set<Channel> more) {
    Set<Channel> all = EnumSet.noneOf(Channel.class);
    all.addAll(seen);
    all.addAll(more);
    return new OuterSensors(centreLightCounts, a, b, all, direction);
  }

  /** The same with a direction. */
  public OuterSensors going(Direction learnt) {
    return new OuterSensors(centreLightCounts, a, b, seen, Optional.of(learnt));
  }
}
