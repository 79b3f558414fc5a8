package org.halflight.exposure;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.halflight.signal.Channel;

/**
 * What is known of the outer sensors when a firing is measured. Both hang on one comparator level,
 * the middle of the two of the centre; each has its own light, so that each switches at a level of
 * its own.
 *
 * @param levelA where sensor A switches, as a fraction of its own full light; empty where its light
 *     was not read
 * @param levelB where sensor B switches, likewise
 * @param seen which of the two are known to see light: by the light that was set, or by a firing
 * @param direction of travel, as far as it was learnt
 */
public record OuterSensors(
    OptionalDouble levelA,
    OptionalDouble levelB,
    Set<Channel> seen,
    Optional<Direction> direction) {
  /** Nothing yet. */
  public static final OuterSensors UNKNOWN =
      new OuterSensors(OptionalDouble.empty(), OptionalDouble.empty(), Set.of(), Optional.empty());

  public OuterSensors {
    seen = Set.copyOf(seen);
  }

  /** Where a sensor switches; half light where its own light was not read. */
  public double level(Channel channel) {
    return given(channel).orElse(0.5);
  }

  OptionalDouble given(Channel channel) {
    return channel == Channel.OUTER_A ? levelA : levelB;
  }

  /** The same with more sensors that see light. */
  public OuterSensors seeing(Set<Channel> more) {
    Set<Channel> all = EnumSet.noneOf(Channel.class);
    all.addAll(seen);
    all.addAll(more);
    return new OuterSensors(levelA, levelB, all, direction);
  }

  /** The same with a direction. */
  public OuterSensors going(Direction learnt) {
    return new OuterSensors(levelA, levelB, seen, Optional.of(learnt));
  }
}
