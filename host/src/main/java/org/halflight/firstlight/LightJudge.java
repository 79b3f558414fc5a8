package org.halflight.firstlight;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/** Judges a light sensor by its readings and by the levels that are to follow them. */
final class LightJudge {
  /** Lit readings in a row before a finger is looked for. Our own limit. */
  static final int LIT_READINGS = 10;

  /** The same where the other outer sensor stays dark, which is found out in its own step. */
  static final int LIT_READINGS_ALONE = 80;

  /** Light that moves by less than 0.1 V has not moved. Our own limit. */
  private static final double STILL_COUNTS = 20;

  /** Under 0.3 V a sensor is dark. Our own limit. */
  private static final double DARK_COUNTS = 60;

  /** Over 4.6 V a sensor is at its end. Our own limit. */
  private static final double END_COUNTS = 940;

  private final BoardTraits board;
  private final RigFacts facts;
  private final boolean armed;

  /**
   * @param armed whether the light was there before the cover was looked for
   */
  LightJudge(BoardTraits board, RigFacts facts, boolean armed) {
    this.board = board;
    this.facts = facts;
    this.armed = armed;
  }

  static Channel otherOuter(Channel outer) {
    return outer == Channel.OUTER_A ? Channel.OUTER_B : Channel.OUTER_A;
  }

  /**
   * What the sensor of a step has shown.
   *
   * @param done whether the person has done what was asked for
   */
  Finding of(FirstStep step, boolean done) {
    Channel sensor = step.input().orElse(Channel.CENTRE_LOW);
    List<Channel> levels =
        step != FirstStep.CENTRE
            ? List.of(sensor)
            : board.oneLevel()
                ? List.of(Channel.CENTRE_LOW)
                : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH);
    Optional<Finding> plain = plain(sensor, levels);
    if (plain.isPresent()) {
      return plain.get();
    }
    if (armed && levels.stream().allMatch(level -> isShown(level, sensor))) {
      return Finding.passed(seen(sensor, levels));
    }
    return done ? verdict(sensor, levels) : Finding.waiting(seen(sensor, levels));
  }

  private boolean isShown(Channel level, Channel sensor) {
    return facts.pair(level, sensor).follows() && facts.rises(level) > 0 && facts.falls(level) > 0;
  }

  /** What nobody needs to ask about, since the light itself has shown it. */
  private Optional<Finding> plain(Channel sensor, List<Channel> levels) {
    for (Channel level : levels) {
      if (facts.pair(level, sensor).isInverted()) {
        return Optional.of(
            Finding.check(Fault.LEVEL_INVERTED, level, seen(sensor, List.of(level))));
      }
    }
    if (levels.contains(Channel.CENTRE_HIGH) && facts.isHighFirst()) {
      return Optional.of(Finding.check(Fault.LEVELS_SWAPPED, seen(sensor, levels)));
    }
    return armed && sensor != Channel.CENTRE_LOW ? ofOuter(sensor) : Optional.empty();
  }

  /** Whether another outer sensor, or a part of it, has answered in place of this one. */
  private Optional<Finding> ofOuter(Channel sensor) {
    Channel other = otherOuter(sensor);
    boolean own = facts.swung(sensor);
    boolean others = facts.swung(other);
    Optional<Fault> fault = Optional.empty();
    if (own && others) {
      fault = Optional.of(Fault.BOTH_COVERED);
    } else if (others && facts.pair(sensor, other).follows()) {
      fault = Optional.of(Fault.LIGHT_SWAPPED);
    } else if (others && facts.pair(other, other).follows()) {
      fault = Optional.of(Fault.SENSORS_SWAPPED);
    } else if (own && facts.pair(other, sensor).follows()) {
      fault = Optional.of(Fault.COMPARATORS_SWAPPED);
    }
    return fault.map(
        its ->
            Finding.check(
                its,
                other,
                Stream.concat(
                        seen(sensor, List.of(sensor)).stream(),
                        seen(other, List.of(other)).stream())
                    .toList()));
  }

  private Finding verdict(Channel sensor, List<Channel> levels) {
    RigFacts.Range light = facts.range(sensor);
    if (light.most() < DARK_COUNTS) {
      return check(Fault.NO_LIGHT, sensor, sensor);
    }
    if (light.least() > END_COUNTS) {
      return check(Fault.ALWAYS_LIGHT, sensor, sensor);
    }
    Optional<Channel> instead =
        Stream.of(Channel.CENTRE_LOW, Channel.OUTER_A, Channel.OUTER_B)
            .filter(each -> each != sensor && facts.swung(each))
            .findFirst();
    if (light.swing() < STILL_COUNTS && instead.isPresent()) {
      return Finding.check(
          Fault.SENSORS_SWAPPED,
          instead.get(),
          Stream.concat(
                  seen(sensor, List.of()).stream(), seen(instead.get(), List.of()).stream())
              .toList());
    }
    for (Channel level : levels) {
      double at = Levels.counts(board, level);
      if (light.most() <= at + RigFacts.MARGIN_COUNTS) {
        return check(Fault.TOO_DIM, level, sensor);
      }
      if (light.least() >= at - RigFacts.MARGIN_COUNTS) {
        return check(Fault.NOT_COVERED, sensor, sensor);
      }
      RigFacts.Pair pair = facts.pair(level, sensor);
      if (pair.isAlwaysOn() || pair.isNeverOn()) {
        Fault fault = pair.isAlwaysOn() ? Fault.LEVEL_ALWAYS_ON : Fault.LEVEL_NEVER_ON;
        return check(fault, level, sensor);
      }
    }
    return check(Fault.NOTHING_CAME, levels.get(0), sensor);
  }

  private Finding check(Fault fault, Channel level, Channel sensor) {
    return Finding.check(fault, level, seen(sensor, List.of(level)));
  }

  private List<Seen> seen(Channel sensor, List<Channel> levels) {
    RigFacts.Range light = facts.range(sensor);
    if (!light.isRead()) {
      return List.of();
    }
    List<Seen> seen = new ArrayList<>();
    seen.add(new Seen.Light(sensor, light.least(), light.most()));
    levels.forEach(
        level -> seen.add(new Seen.Changes(level, facts.rises(level), facts.falls(level))));
    return seen;
  }
}
