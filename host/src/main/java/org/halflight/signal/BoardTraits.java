package org.halflight.signal;

import java.util.List;
import org.halflight.stored.StoredWords;
import org.halflight.time.TickRate;

/**
 * What a kind of board brings with it. Made from what a rig says of itself when it greets, and
 * handed to whoever needs it. Support for another board begins here.
 *
 * @param rate how fast it counts
 * @param kind which rig it is part of
 * @param knob whether it has an input for the knob contact
 */
public record BoardTraits(TickRate rate, Kind kind, boolean knob) {
  /** The rigs there are. Whoever needs to know what one can do asks the traits. */
  public enum Kind {
    /** Three sensors, two levels, all inputs. */
    FULL,
    /** One sensor and one level, which is set to either of two in turn. */
    SMALL,
    /** A photodiode and a resistor, one level that cannot be set. */
    STARTER;

    /** As the greeting, the images and files have them. */
    public static final StoredWords<Kind> WORDS =
        StoredWords.of(
            Kind.class,
            kind ->
                switch (kind) {
                  case FULL -> "full";
                  case SMALL -> "small";
                  case STARTER -> "starter";
                });
  }

  /** What a rig is taken for that has not greeted yet. */
  public static final BoardTraits USUAL = new BoardTraits(TickRate.BOARD_16_MHZ, false, false);

  /**
   * The greatest reading of light, in counts. All boards tell their light on this scale of ten bits
   * (docs/protocol.md), whatever converter they have.
   */
  public static final int FULL_SCALE_COUNTS = 1023;

  /** A count of that scale at a supply of 5 V, as most boards have it. */
  public static final double MILLIVOLTS_PER_COUNT = 5000.0 / (FULL_SCALE_COUNTS + 1);

  /** The clocks of docs/protocol.md. */
  private static final List<Long> CLOCKS_HZ = List.of(16_000_000L, 8_000_000L);

  /** How far off a ceramic resonator may be: 0.5 % is 0.007 stop, and makes no time false. */
  private static final double CLOCK_SHARE = 0.005;

  private static final double LATE_SECONDS = 0.020;
  private static final double STAMP_SECONDS = 4e-6;
  private static final double BEAT_SLACK_SECONDS = 1e-3;

  /** A full rig or, with one level, a small one. */
  public BoardTraits(TickRate rate, boolean oneLevel, boolean knob) {
    this(rate, oneLevel ? Kind.SMALL : Kind.FULL, knob);
  }

  /** Whether it has one sensor and one comparator, so that it sees one level at a time. */
  public boolean oneLevel() {
    return kind != Kind.FULL;
  }

  /**
   * Whether its one level cannot be set: edges find a firing, and its light curve alone measures
   * it.
   */
  public boolean fixedLevel() {
    return kind == Kind.STARTER;
  }

  /** Whether it has an input for the flash contact. */
  public boolean flashContact() {
    return kind == Kind.FULL;
  }

  /** Whether it has an input for the sound of the linkage. */
  public boolean clicks() {
    return kind != Kind.STARTER;
  }

  /** Whether it has a reference LED. */
  public boolean referenceLed() {
    return kind != Kind.STARTER;
  }

  /**
   * Whether a board can count so fast: as one of the known clocks, or as far off as such a clock
   * was found to be. Any other rate is a damaged line, whatever its CRC.
   */
  public static boolean hasClock(long ticksPerSecond) {
    return CLOCKS_HZ.stream().anyMatch(hz -> Math.abs(ticksPerSecond - hz) <= CLOCK_SHARE * hz);
  }

  /** How far out of order edges may come on the wire: 20 ms, by protocol. */
  public long lateTicks() {
    return rate.ticks(LATE_SECONDS);
  }

  /**
   * 4 us: the end of a shorter pulse is stamped by software, and may be put a little before its
   * beginning.
   */
  public long stampTicks() {
    return rate.ticks(STAMP_SECONDS);
  }

  /** Levels and ticks of a beat are read within this of each other: 1 ms. */
  public long beatSlackTicks() {
    return rate.ticks(BEAT_SLACK_SECONDS);
  }
}
