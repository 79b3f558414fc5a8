package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * What an invented starter rig tells of the light and of firings, as docs/protocol.md has it: edges
 * of one level, and the readings of the converter in blocks of 16.
 */
public final class StarterBench {
  /**
   * The light as it was set, in counts.
   *
   * @param bandgap the comparator's level
   */
  public record LightSet(double dark, double full, double bandgap) {}

  /**
   * A firing.
   *
   * @param bandgap the comparator's level, read beside it
   * @param endTicks when the rig has seen the end of it
   */
  public record Fired(List<Told.Edge> edges, Told.Curve curve, double bandgap, long endTicks) {}

  private static final int READING_TICKS = 256;
  private static final int BLOCK = 16;
  private static final int BLOCK_TICKS = BLOCK * READING_TICKS;
  private static final int BEFORE_BLOCKS = 4;
  private static final int OPENING_BLOCKS = 24;
  private static final int CLOSING_BLOCKS = 16;
  private static final int DARK_BLOCKS = 2;
  private static final int PLATEAU_VALUES = 64;

  /** From before the first block of a curve to behind its last. */
  private static final int MARGIN_BLOCKS = 8;

  /** Light is set by readings at a quarter of the rate of curves, over two beats of the mains. */
  private static final double SLOW_SECONDS = 62.5e-6;

  private static final double SETTING_SECONDS = 20e-3;

  private static final double HELD_SECONDS = 2e-6;
  private static final double LATE_SECONDS = 0.5e-6;
  private static final double BANDGAP_COUNTS = 0.3;

  private final StarterRig rig;
  private final Draws draws;

  public StarterBench(StarterRig rig, Draws draws) {
    this.rig = rig;
    this.draws = draws;
  }

  /**
   * Dark and full light, and the level, as the program takes them.
   *
   * @param fast whether the converter reads as fast then as it does for a curve
   */
  public LightSet set(boolean fast) {
    return new LightSet(steady(0, fast), steady(1, fast), bandgap(rig.bandgapVolts(), 0));
  }

  private double steady(double seen, boolean fast) {
    double phase = draws.between(0, 2 * Math.PI);
    double period = fast ? READING_TICKS / 16e6 : SLOW_SECONDS;
    int readings = (int) Math.round(SETTING_SECONDS / period);
    int settling = readings / 5;
    StarterCircuit circuit = circuit(rig.parts(), t -> amps(seen, t, phase), -settling * period);
    double sum = 0;
    for (int i = -settling; i < readings; i++) {
      circuit.goOnTo(i * period);
      int reading = reading(circuit.read(), rig.parts().supplyVolts(), fast);
      sum += i < 0 ? 0 : reading;
    }
    return sum / readings;
  }

  /**
   * One firing.
   *
   * @param zeroTicks the tick of the first light, with its fraction
   */
  public Fired fire(Light light, double zeroTicks) {
    StarterCircuit.Parts parts =
        rig.parts().on(rig.parts().supplyVolts() * (1 + rig.supplyShift()));
    double lamp = (1 + rig.fade()) * (1 + rig.wander() * draws.normal());
    double phase = draws.between(0, 2 * Math.PI);
    double open = light.seen(light.openingSeconds());
    DoubleUnaryOperator amps =
        t -> amps(lamp * (light.standsOpen(t, t) ? open : light.seen(t)), t, phase);
    long first =
        (long) Math.floor(zeroTicks) - MARGIN_BLOCKS * BLOCK_TICKS - draws.upTo(BLOCK_TICKS - 1);
    double rate = rig.ticksPerSecond();
    double last = zeroTicks + light.endSeconds() * rate;
    int blocks = (int) ((last - first) / BLOCK_TICKS) + 2 * OPENING_BLOCKS;
    StarterCircuit circuit = circuit(parts, amps, (first - BLOCK_TICKS - zeroTicks) / rate);
    int[] readings = new int[blocks * BLOCK];
    for (int i = -BLOCK; i < readings.length; i++) {
      circuit.goOnTo((first + (long) i * READING_TICKS - zeroTicks) / rate - HELD_SECONDS);
      int reading = reading(circuit.read(), parts.supplyVolts(), true);
      if (i >= 0) {
        readings[i] = reading;
      }
    }
    List<Told.Edge> edges = new ArrayList<>();
    long before = Long.MIN_VALUE;
    for (StarterCircuit.Passing passing : circuit.passings()) {
      long ticks = (long) Math.floor(zeroTicks + (passing.seconds() + LATE_SECONDS) * rate);
      before = Math.max(before + 1, ticks);
      edges.add(new Told.Edge(0, passing.up(), before));
    }
    double bandgap = bandgap(rig.bandgapVolts() * (1 + rig.bandgapShift()), rig.supplyShift());
    List<Told.Part> told = parts(readings, first, darkCode(bandgap));
    long ends = first + (long) blocks * BLOCK_TICKS;
    return new Fired(edges, new Told.Curve(ends, told), bandgap, ends);
  }

  private double amps(double seen, double seconds, double phase) {
    double ripple =
        rig.roomRippleAmps() == 0
            ? 0
            : rig.roomRippleAmps() * Math.sin(2 * Math.PI * 100 * seconds + phase);
    return rig.fullAmps() * seen + rig.roomAmps() + ripple;
  }

  private StarterCircuit circuit(
      StarterCircuit.Parts parts, DoubleUnaryOperator amps, double fromSeconds) {
    return new StarterCircuit(
        parts, rig.bandgapVolts() + rig.offsetVolts(), rig.hysteresisVolts(), amps, fromSeconds);
  }

  private int reading(double volts, double supply, boolean fast) {
    double counts = 1024 * volts / supply;
    double part = counts / 1024;
    double read = counts + 4 * rig.bowCounts() * part * (1 - part);
    if (fast) {
      read += rig.fastCounts() + rig.fastGain() * counts;
    }
    read += rig.readingCounts() * draws.normal();
    return (int) Math.max(0, Math.min(1023, Math.floor(read)));
  }

  /** The mean of 64 readings. */
  private double bandgap(double volts, double shift) {
    return 1024 * volts / (rig.parts().supplyVolts() * (1 + shift))
        - 0.5
        + BANDGAP_COUNTS * draws.normal();
  }

  /** What the firmware keeps of the readings, block by block. */
  private static List<Told.Part> parts(int[] readings, long first, int code) {
    int blocks = readings.length / BLOCK;
    int begins = BEFORE_BLOCKS;
    while (begins < blocks && !isLight(readings, begins, code)) {
      begins++;
    }
    List<Told.Part> parts = new ArrayList<>();
    if (begins == blocks) {
      return parts;
    }
    int from = begins - BEFORE_BLOCKS;
    int opened = from + OPENING_BLOCKS;
    parts.add(window(0, readings, from, Math.min(blocks, opened), first));
    int dark = 0;
    int at = begins;
    for (; at < blocks && (at < opened || dark < DARK_BLOCKS); at++) {
      dark = isLight(readings, at, code) ? 0 : dark + 1;
    }
    if (at > opened) {
      int closes = Math.max(opened, at - CLOSING_BLOCKS);
      plateau(parts, readings, opened, closes, first);
      parts.add(window(2, readings, closes, at, first));
    }
    return parts;
  }

  /** Half the level, in eight bits, is dark: so a curve shows where the ramps end. */
  private static int darkCode(double bandgap) {
    return ((int) Math.floor(bandgap / 4 + 0.5) - 1) / 2;
  }

  private static boolean isLight(int[] readings, int block, int code) {
    return Arrays.stream(readings, block * BLOCK, (block + 1) * BLOCK)
        .anyMatch(reading -> reading / 4 > code);
  }

  private static Told.Part window(int kind, int[] readings, int from, int until, long first) {
    return new Told.Part(
        kind,
        first + (long) from * BLOCK_TICKS,
        READING_TICKS,
        Arrays.stream(readings, from * BLOCK, until * BLOCK).map(r -> r / 4).boxed().toList());
  }

  /** Means over spans of equal length, and what is left of a span in ever shorter ones. */
  private static void plateau(
      List<Told.Part> parts, int[] readings, int from, int until, long first) {
    int span = 1;
    while (span * PLATEAU_VALUES <= until - from) {
      span *= 2;
    }
    for (int at = from; at < until; span /= 2) {
      List<Integer> values = new ArrayList<>();
      int begins = at;
      for (; at + span <= until; at += span) {
        int sum = Arrays.stream(readings, at * BLOCK, (at + span) * BLOCK).sum();
        values.add(sum / span);
      }
      if (!values.isEmpty()) {
        parts.add(
            new Told.Part(
                1, first + (long) begins * BLOCK_TICKS, (long) span * BLOCK_TICKS, values));
      }
    }
  }
}
