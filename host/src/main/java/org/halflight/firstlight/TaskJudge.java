package org.halflight.firstlight;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/** Judges what the program finds out by itself: supply, thresholds, reference LED. */
public final class TaskJudge {
  /** What the chip wants at 16 MHz by its data sheet (from memory). */
  private static final double SUPPLY_LEAST_VOLTS = 4.5;

  /** What a USB port gives at most by its specification (from memory). */
  private static final double SUPPLY_MOST_VOLTS = 5.25;

  /** The usual supply. */
  private static final double SUPPLY_VOLTS = 5;

  /** A threshold may read so far off, 0.15 V. Our own limit. */
  private static final double OFF_MOST_COUNTS = 30;

  /** One that moves by less than this share of what was set does not follow. Our own limit. */
  private static final double FOLLOWS_SHARE = 0.5;

  /** The reference of a chip by its data sheet (from memory), and what a converter may be off. */
  private static final double REFERENCE_LEAST_VOLTS = 0.95;

  private static final double REFERENCE_MOST_VOLTS = 1.25;

  /** The LED brings at least this, 0.1 V. Our own limit. */
  private static final double LED_LEAST_COUNTS = 20;

  private TaskJudge() {}

  /** The supply, as a voltmeter shows it. */
  public static Finding supply(double volts) {
    List<Seen> seen = List.of(new Seen.Supply(volts));
    if (volts < SUPPLY_LEAST_VOLTS) {
      return Finding.check(Fault.SUPPLY_LOW, seen);
    }
    return volts > SUPPLY_MOST_VOLTS
        ? Finding.check(Fault.SUPPLY_HIGH, seen)
        : Finding.passed(seen);
  }

  /**
   * Two settings of the thresholds, read back.
   *
   * @param oneLevel whether only the low one is there
   */
  public static Finding thresholds(
      boolean oneLevel, RigMessage.Thresholds first, RigMessage.Thresholds second) {
    List<Seen> seen = new ArrayList<>();
    for (RigMessage.Thresholds each : List.of(first, second)) {
      seen.add(low(each));
      if (!oneLevel) {
        seen.add(high(each));
      }
    }
    if (!oneLevel && isSwapped(first) && isSwapped(second)) {
      return Finding.check(Fault.THRESHOLDS_SWAPPED, seen);
    }
    List<Channel> levels =
        oneLevel ? List.of(Channel.CENTRE_LOW) : List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH);
    for (Channel level : levels) {
      Seen.ReadBack one = level == Channel.CENTRE_LOW ? low(first) : high(first);
      Seen.ReadBack two = level == Channel.CENTRE_LOW ? low(second) : high(second);
      double moved = two.readCounts() - one.readCounts();
      if (moved < FOLLOWS_SHARE * (two.setCounts() - one.setCounts())) {
        return Finding.check(Fault.THRESHOLD_FIXED, level, List.of(one, two));
      }
      if (off(one) > OFF_MOST_COUNTS || off(two) > OFF_MOST_COUNTS) {
        return Finding.check(Fault.THRESHOLD_OFF, level, List.of(one, two));
      }
    }
    return Finding.passed(seen);
  }

  private static double off(Seen.ReadBack its) {
    return Math.abs(its.readCounts() - its.setCounts());
  }

  private static boolean isSwapped(RigMessage.Thresholds read) {
    return Math.abs(low(read).readCounts() - high(read).setCounts()) < OFF_MOST_COUNTS
        && Math.abs(high(read).readCounts() - low(read).setCounts()) < OFF_MOST_COUNTS;
  }

  private static Seen.ReadBack low(RigMessage.Thresholds read) {
    return new Seen.ReadBack(Channel.CENTRE_LOW, 4 * (read.lowCode() + 1), read.lowSum64() / 64.0);
  }

  private static Seen.ReadBack high(RigMessage.Thresholds read) {
    return new Seen.ReadBack(
        Channel.CENTRE_HIGH, 4 * (read.highCode() + 1), read.highSum64() / 64.0);
  }

  /**
   * The reference inside the chip.
   *
   * @param supply as it was measured; else the usual one is taken
   */
  public static Finding reference(RigMessage.Thresholds read, Optional<Seen.Supply> supply) {
    double volts =
        read.lowSum64()
            / 64.0
            / (BoardTraits.FULL_SCALE_COUNTS + 1)
            * supply.map(Seen.Supply::volts).orElse(SUPPLY_VOLTS);
    List<Seen> seen = List.of(new Seen.Reference(volts));
    return volts < REFERENCE_LEAST_VOLTS || volts > REFERENCE_MOST_VOLTS
        ? Finding.check(Fault.REFERENCE_OFF, seen)
        : Finding.passed(seen);
  }

  /**
   * The reference LED under its cover.
   *
   * @param darkCounts light of the centre without it
   * @param litCounts with it
   * @param made pulses of each drive
   * @param square how many square ones the low level saw
   * @param ramped how many ramped ones
   */
  public static Finding led(
      BoardTraits board, double darkCounts, double litCounts, int made, int square, int ramped) {
    Seen.Led led = new Seen.Led(darkCounts, litCounts);
    double level = Levels.counts(board, Channel.CENTRE_LOW);
    if (darkCounts > level - RigFacts.MARGIN_COUNTS) {
      return Finding.check(Fault.LED_STRAY, List.of(led));
    }
    if (litCounts - darkCounts < LED_LEAST_COUNTS) {
      return Finding.check(Fault.LED_DARK, List.of(led));
    }
    if (litCounts < level + RigFacts.MARGIN_COUNTS) {
      return Finding.check(Fault.LED_DIM, List.of(led));
    }
    List<Seen> seen =
        List.of(
            led,
            new Seen.Pulses(ReferenceDrive.SQUARE, made, square),
            new Seen.Pulses(ReferenceDrive.RAMPED, made, ramped));
    return square != made
        ? Finding.check(Fault.LED_SQUARE, seen)
        : ramped != made ? Finding.check(Fault.LED_RAMPED, seen) : Finding.passed(seen);
  }
}
