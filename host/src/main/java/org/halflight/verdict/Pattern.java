package org.halflight.verdict;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.halflight.speeds.MarkedSpeed;

/**
 * What the errors of one run look like over the dial. It points to where to look first and proves
 * nothing; reasoning over causes, with evidence for and against, builds on it.
 *
 * @param kind which pattern
 * @param speeds those that make it, slow to fast
 * @param signs what else there is to see at these speeds
 * @param leastStops smallest mean error of these speeds, where known
 * @param mostStops greatest mean error of these speeds, where known
 */
public record Pattern(
    Kind kind,
    List<MarkedSpeed> speeds,
    List<Sign> signs,
    OptionalDouble leastStops,
    OptionalDouble mostStops) {
  /** The patterns that are told apart. */
  public enum Kind {
    /** The speeds of the slow-speed train are long or hang, the fast ones are sound. */
    SLOW_SPEED_TRAIN,
    /** All speeds are long. */
    ALL_SLOW,
    /** All speeds are short. */
    ALL_FAST,
    /** Only the top speed is long. */
    TOP_SLOW,
    /** One speed is off and all others are sound. */
    ONE_ALONE,
    /** Some speeds are off, in no pattern that this program knows. */
    NO_KNOWN_PATTERN,
    /** Nothing stands out. */
    NOTHING_STANDS_OUT,
    /** Too few speeds or firings to see a pattern. */
    TOO_LITTLE
  }

  /** A sign beside the mean error. */
  public sealed interface Sign {}

  /**
   * The speeds scatter more than the others do.
   *
   * @param stops standard deviation of one firing at these speeds, pooled
   * @param othersStops the same of the other speeds; empty where they cannot be told
   */
  public record Scatters(double stops, OptionalDouble othersStops) implements Sign {}

  /**
   * Firing after firing becomes slower.
   *
   * @param stopsAFiring median over the speeds
   * @param p the chance of such a trend where order does not matter
   */
  public record Creeps(double stopsAFiring, double p) implements Sign {}

  /**
   * The shutter stayed open.
   *
   * @param count how often
   * @param tries of how many releases at these speeds
   */
  public record Hangs(int count, int tries) implements Sign {}

  /**
   * The first firing after rest was slower than the others of its speed.
   *
   * @param speed at which it was fired
   * @param stops by how much
   */
  public record LagsAfterRest(MarkedSpeed speed, double stops) implements Sign {}

  public Pattern {
    Objects.requireNonNull(kind);
    speeds = List.copyOf(speeds);
    signs = List.copyOf(signs);
  }
}
