package org.halflight.profile;

import org.halflight.stored.StoredWords;
import org.halflight.time.TickRate;

/**
 * How fast the clock of a board runs against time.
 *
 * @param fastPpm parts in a million by which it counts more ticks in a second than it says; below
 *     zero where it is slow
 * @param standardUncertaintyPpm of that
 * @param degreesOfFreedom of the uncertainty; infinite where it is not from few readings
 * @param source what it was held against
 */
public record ClockRate(
    double fastPpm, double standardUncertaintyPpm, double degreesOfFreedom, Source source) {
  /** No clock of a board is off by more. */
  public static final double PPM_MOST = 50_000;

  /** What a clock was held against; the worth of a rate hangs on it. */
  public enum Source {
    /** The clock of the host, by pings: a computer's quartz, perhaps steered by a time service. */
    HOST_CLOCK,
    /** One edge a second from a receiver of satellite time or the like. */
    PULSE_PER_SECOND,
    /** A generator of known frequency. */
    GENERATOR,
    /** A lamp on the mains: the mains wander by some hundred ppm within minutes. */
    MAINS_LAMP,
    /** A slotted disc whose speed was measured by other means. */
    DISC;

    /** As files store them. */
    public static final StoredWords<Source> WORDS =
        StoredWords.of(
            Source.class,
            source ->
                switch (source) {
                  case HOST_CLOCK -> "host-clock";
                  case PULSE_PER_SECOND -> "pulse-per-second";
                  case GENERATOR -> "generator";
                  case MAINS_LAMP -> "mains-lamp";
                  case DISC -> "disc";
                });
  }

  public ClockRate {
    Checked.finite(fastPpm);
    Checked.uncertainty(standardUncertaintyPpm);
    if (!(degreesOfFreedom > 0)) {
      throw new IllegalArgumentException("no degrees of freedom: " + degreesOfFreedom);
    }
    if (Math.abs(fastPpm) > PPM_MOST) {
      throw new IllegalArgumentException("no clock of a board is off by " + fastPpm + " ppm");
    }
  }

  /** The length in seconds of what a board calls so many seconds. */
  public double seconds(double boardSeconds) {
    return boardSeconds / (1 + fastPpm * 1e-6);
  }

  /** The ticks that a board with a nominal rate really counts in a second, to the nearest. */
  public TickRate rate(TickRate nominal) {
    return new TickRate(Math.round(nominal.ticksPerSecond() * (1 + fastPpm * 1e-6)));
  }
}
