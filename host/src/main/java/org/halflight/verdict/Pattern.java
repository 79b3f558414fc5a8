package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import org.halflight.session.Outcome;
import org.halflight.speeds.MarkedSpeed;

/**
 * What one run looks like over the dial. It says what was measured and names no cause: one look at
 * a dial parts no two of them.
 *
 * @param kind which speeds are off
 * @param speeds those that are off, slow to fast
 * @param errors mean errors of these speeds, where they have any
 * @param otherErrors mean errors of the other timed speeds, where there are any
 * @param signs what else stands out, releases without a time first
 */
public record Pattern(
    Kind kind,
    List<MarkedSpeed> speeds,
    Optional<Range> errors,
    Optional<Range> otherErrors,
    List<Sign> signs) {
  /** Which speeds are off. */
  public enum Kind {
    /** Most of the slow half of the dial is long, and nothing else is off. */
    SLOW_SPEEDS,
    /** All speeds are long. */
    ALL_SLOW,
    /** All speeds are short. */
    ALL_FAST,
    /** Only the top speed is off, and it is long. */
    TOP_SLOW,
    /** Only one speed is off. */
    ONE_ALONE,
    /** Some speeds are off. */
    SOME_SPEEDS,
    /** No mean is off, but something else stands out. */
    NO_MEAN_OFF,
    /** Nothing stands out. */
    NOTHING_STANDS_OUT,
    /** Too few speeds or firings to look over the dial; what stands out is said all the same. */
    TOO_LITTLE
  }

  /**
   * From the least to the greatest, in stops.
   *
   * @param least above zero is slow
   * @param most no less
   */
  public record Range(double least, double most) {}

  /** Something that stands out beside the means. */
  public sealed interface Sign {}

  /**
   * Releases that came to something else than a time.
   *
   * @param outcome what they came to
   * @param speeds at which, slow to fast
   * @param count how often
   * @param tries of how many releases at these speeds
   */
  public record WithoutTime(Outcome outcome, List<MarkedSpeed> speeds, int count, int tries)
      implements Sign {
    public WithoutTime {
      speeds = List.copyOf(speeds);
    }
  }

  /**
   * Firings are uneven.
   *
   * @param speeds at which, slow to fast
   * @param scatter standard deviation of one firing at these speeds, in stops
   */
  public record Scatters(List<MarkedSpeed> speeds, Range scatter) implements Sign {
    public Scatters {
      speeds = List.copyOf(speeds);
    }
  }

  /**
   * Firing after firing becomes slower or faster.
   *
   * @param speeds that were looked at together, slow to fast
   * @param stopsAFiring median over the speeds; above zero: slower
   * @param p the chance of such a trend where order does not matter
   */
  public record Creeps(List<MarkedSpeed> speeds, double stopsAFiring, double p) implements Sign {
    public Creeps {
      speeds = List.copyOf(speeds);
    }
  }

  /**
   * The first firing after rest was another than those that followed at its speed.
   *
   * @param speed at which it was fired
   * @param stops it less the mean of the others; above zero: slower
   */
  public record UnlikeAfterRest(MarkedSpeed speed, double stops) implements Sign {}

  public Pattern {
    speeds = List.copyOf(speeds);
    signs = List.copyOf(signs);
  }
}
