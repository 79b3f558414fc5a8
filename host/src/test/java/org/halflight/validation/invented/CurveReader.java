package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;

/**
 * What the converter of a rig makes of the light of a firing, as docs/protocol.md has it: blocks of
 * 16 readings; a window that begins four blocks before the light reaches the low threshold and
 * holds 24; a window of the last 16 blocks, of which two are dark; means between.
 */
final class CurveReader {
  private static final int READING_TICKS = 256;
  private static final int BLOCK = 16;
  private static final int BLOCK_TICKS = BLOCK * READING_TICKS;
  private static final int BEFORE_BLOCKS = 4;
  private static final int OPENING_BLOCKS = 24;
  private static final int CLOSING_BLOCKS = 16;
  private static final int DARK_BLOCKS = 2;
  private static final int PLATEAU_VALUES = 64;

  /** Noise of a reading: of the converter in counts, of the lamp as a part. */
  private static final double COUNTS_OF_NOISE = 0.5;

  private static final double LAMP_NOISE = 0.002;

  private final Light light;
  private final Rig rig;
  private final double fullCounts;
  private final double zeroTicks;
  private final Draws draws;

  /**
   * @param lampPart full light of this firing, as a part of what it was when it was set
   * @param zeroTicks the tick of the first light, with its fraction
   */
  CurveReader(Light light, Rig rig, double lampPart, double zeroTicks, Draws draws) {
    this.light = light;
    this.rig = rig;
    this.fullCounts = (rig.full() - rig.dark()) * lampPart;
    this.zeroTicks = zeroTicks;
    this.draws = draws;
  }

  /** The parts of the curve. */
  List<Told.Part> parts() {
    double reached = (rig.lowThreshold() - rig.dark()) / fullCounts;
    List<Light.Passing> passings = light.passings(reached, reached);
    long rise = (long) Math.floor(zeroTicks + ticks(passings.get(0).seconds()));
    long fall = (long) Math.floor(zeroTicks + ticks(lastOfFirst(passings)));
    long grid = draws.upTo(BLOCK_TICKS - 1);
    long first = Math.floorDiv(rise - grid, BLOCK_TICKS) - BEFORE_BLOCKS;
    long last = Math.floorDiv(fall - grid, BLOCK_TICKS) + DARK_BLOCKS;
    List<Told.Part> parts = new ArrayList<>();
    long opens = first + OPENING_BLOCKS;
    if (last < opens) {
      parts.add(window(0, first * BLOCK_TICKS + grid, last - first + 1));
      return parts;
    }
    parts.add(window(0, first * BLOCK_TICKS + grid, OPENING_BLOCKS));
    long closes = Math.max(opens, last + 1 - CLOSING_BLOCKS);
    plateau(parts, opens, closes, grid);
    parts.add(window(2, closes * BLOCK_TICKS + grid, last + 1 - closes));
    return parts;
  }

  /** When it gets dark for longer than the dark blocks. */
  private static double lastOfFirst(List<Light.Passing> passings) {
    double dark = DARK_BLOCKS * BLOCK_TICKS / 16e6;
    double end = passings.get(1).seconds();
    for (int i = 2; i + 1 < passings.size(); i += 2) {
      if (passings.get(i).seconds() - end > dark) {
        break;
      }
      end = passings.get(i + 1).seconds();
    }
    return end;
  }

  private Told.Part window(int kind, long from, long blocks) {
    List<Integer> values = new ArrayList<>();
    for (int i = 0; i < blocks * BLOCK; i++) {
      double seen = light.seen(seconds(from + (long) i * READING_TICKS));
      double counts =
          rig.dark()
              + fullCounts * seen * (1 + LAMP_NOISE * draws.normal())
              + COUNTS_OF_NOISE * draws.normal();
      values.add((int) Math.max(0, Math.min(255, Math.floor(counts / 4))));
    }
    return new Told.Part(kind, from, READING_TICKS, values);
  }

  /** Means over spans of equal length, and what is left of a span in ever shorter ones. */
  private void plateau(List<Told.Part> parts, long from, long until, long grid) {
    long span = 1;
    while (span * PLATEAU_VALUES < until - from) {
      span *= 2;
    }
    long at = from;
    while (at < until) {
      long many = (until - at) / span;
      if (many > 0) {
        List<Integer> values = new ArrayList<>();
        for (int i = 0; i < many; i++) {
          values.add(mean((at + i * span) * BLOCK_TICKS + grid, span * BLOCK));
        }
        parts.add(new Told.Part(1, at * BLOCK_TICKS + grid, span * BLOCK_TICKS, values));
        at += many * span;
      }
      span /= 2;
    }
  }

  private int mean(long from, long readings) {
    double sum = 0;
    if (light.standsOpen(seconds(from), seconds(from + readings * READING_TICKS))) {
      sum = light.seen(seconds(from)) * (double) readings;
    } else {
      for (long i = 0; i < readings; i++) {
        sum += light.seen(seconds(from + i * READING_TICKS));
      }
    }
    double noise = LAMP_NOISE / Math.sqrt((double) readings) * draws.normal();
    double counts = rig.dark() + fullCounts * sum / (double) readings * (1 + noise);
    // A reading is the count below the light: half a count less in the mean.
    return (int) Math.floor(16 * Math.max(0, counts - 0.5));
  }

  private double ticks(double seconds) {
    return seconds * rig.ticksPerSecond();
  }

  private double seconds(long ticks) {
    return ((double) ticks - zeroTicks) / rig.ticksPerSecond();
  }
}
