package org.halflight.shuttermodel;

import java.util.ArrayList;
import java.util.List;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.time.TickRate;

/**
 * The light curve that a rig's converter takes of a light path: eight-bit readings around opening
 * and closing, means between; the shape of the line protocol. Model figures, no measurement.
 *
 * @param beforeReadings readings before the light reaches the trigger
 * @param windowReadings readings that a window holds at most
 * @param afterReadings readings after the light fell below the trigger
 * @param plateauMeans means that the plateau holds at most; their spans double until that is enough
 */
public record CurveSampler(
    int beforeReadings, int windowReadings, int afterReadings, int plateauMeans) {
  /** Ticks between two readings in a window: 62.5 kS/s of a 16 MHz board. */
  public static final int PERIOD_TICKS = 256;

  /** An invented rig with room for short openings in one window. */
  public static final CurveSampler INVENTED = new CurveSampler(48, 256, 48, 128);

  private static final int READINGS_OF_A_SUM = 16;

  /** Readings of a mean of the tail: 64 us; twice as many where it is light longer. */
  private static final int TAIL_SPAN = 4;

  /** Readings of dark behind which a tail ends: 12.8 ms. */
  private static final int TAIL_DARK_READINGS = 800;

  private static final int TAIL_MEANS_MOST = 208;

  public CurveSampler {
    if (beforeReadings < 1
        || afterReadings < 1
        || windowReadings <= beforeReadings + afterReadings
        || plateauMeans < 2) {
      throw new IllegalArgumentException("a window holds more than what is before and after");
    }
  }

  /** What is sampled: the output of a front end over a path, with noise. */
  private record Wire(
      FrontEnd sensor, LightPath path, long startTicks, double noise, SeededDraws draws) {
    /** Readings of ten bits from a tick on. */
    int[] counts(long fromTicks, int n) {
      double[] times = new double[n];
      for (int i = 0; i < n; i++) {
        times[i] = TickRate.BOARD_16_MHZ.seconds(fromTicks + (long) i * PERIOD_TICKS - startTicks);
      }
      double lampSeconds = TickRate.BOARD_16_MHZ.seconds(startTicks);
      double[] millivolts = sensor.millivolts(path, lampSeconds, times);
      int[] counts = new int[n];
      for (int i = 0; i < n; i++) {
        double noisy = millivolts[i] + noise * draws.normal();
        counts[i] =
            (int)
                Math.max(0, Math.min(1023, Math.floor(noisy * 1024 / FrontEnd.SUPPLY_MILLIVOLTS)));
      }
      return counts;
    }
  }

  /**
   * Samples a path that begins and ends in the dark.
   *
   * @param startTicks ticks of time 0 of the path
   * @param triggerMillivolts the threshold that tells light from dark
   */
  public SampledLight sample(
      FrontEnd sensor,
      LightPath path,
      long startTicks,
      double triggerMillivolts,
      SeededDraws draws) {
    Wire wire = new Wire(sensor, path, startTicks, sensor.noiseMillivolts(), draws);
    Trigger trigger = trigger(sensor, path, startTicks, triggerMillivolts, draws);
    long first = trigger.firstReading();
    long fall = trigger.fall();
    long end = first + ((fall - first) / PERIOD_TICKS + 1 + afterReadings) * PERIOD_TICKS;
    long all = (end - first) / PERIOD_TICKS;
    if (all <= windowReadings) {
      return new SampledLight(List.of(readings(wire, Kind.OPENING, first, (int) all)), false);
    }
    Part opening = readings(wire, Kind.OPENING, first, windowReadings);
    long plateauFrom = first + (long) windowReadings * PERIOD_TICKS;
    // The last window is a ring that always holds the latest readings.
    long closingFrom =
        Math.max(plateauFrom, end - (long) (windowReadings - beforeReadings) * PERIOD_TICKS);
    Part closing =
        readings(wire, Kind.CLOSING, closingFrom, (int) ((end - closingFrom) / PERIOD_TICKS));
    if (closingFrom == plateauFrom) {
      return new SampledLight(List.of(opening, closing), false);
    }
    return new SampledLight(
        List.of(opening, means(wire, plateauFrom, closingFrom), closing), false);
  }

  /**
   * Samples like {@link #sample}, by a long curve that looks for a rebound: one window, then a tail
   * of short means until it has been dark for 12 ms.
   */
  public SampledLight sampleLong(
      FrontEnd sensor,
      LightPath path,
      long startTicks,
      double triggerMillivolts,
      SeededDraws draws) {
    Wire wire = new Wire(sensor, path, startTicks, sensor.noiseMillivolts(), draws);
    Trigger trigger = trigger(sensor, path, startTicks, triggerMillivolts, draws);
    long first = trigger.firstReading();
    long fall = trigger.fall();
    long tailFrom = first + (long) windowReadings * PERIOD_TICKS;
    int span = fall < tailFrom ? TAIL_SPAN : 2 * TAIL_SPAN;
    long wanted = Math.max(0, fall - tailFrom) / PERIOD_TICKS + TAIL_DARK_READINGS;
    int means = (int) Math.min(TAIL_MEANS_MOST, wanted / span);
    long end = tailFrom + (long) means * span * PERIOD_TICKS;
    return new SampledLight(
        List.of(
            readings(wire, Kind.OPENING, first, windowReadings),
            new Part(
                Kind.TAIL,
                tailFrom,
                (long) span * PERIOD_TICKS,
                meansOf(wire, tailFrom, end, span),
                false)),
        fall >= end);
  }

  /**
   * What the converter takes its time from, in ticks.
   *
   * @param firstReading of the window before the light
   * @param fall the last time the light falls through the threshold
   */
  private record Trigger(long firstReading, long fall) {}

  private Trigger trigger(
      FrontEnd sensor,
      LightPath path,
      long startTicks,
      double triggerMillivolts,
      SeededDraws draws) {
    List<Crossing> crossings =
        sensor.crossings(path, TickRate.BOARD_16_MHZ.seconds(startTicks), triggerMillivolts);
    if (crossings.isEmpty()) {
      throw new IllegalArgumentException("light that never reaches the trigger is not sampled");
    }
    long rise = startTicks + TickRate.BOARD_16_MHZ.ticks(crossings.get(0).seconds());
    long fall =
        startTicks + TickRate.BOARD_16_MHZ.ticks(crossings.get(crossings.size() - 1).seconds());
    // The converter runs all the time; the path does not know its phase.
    long first = Math.floorDiv(rise, PERIOD_TICKS) * PERIOD_TICKS - phase(draws);
    return new Trigger(first - (long) (beforeReadings - 1) * PERIOD_TICKS, fall);
  }

  private static long phase(SeededDraws draws) {
    return (long) (draws.uniform() * PERIOD_TICKS);
  }

  private static Part readings(Wire wire, Kind kind, long from, int n) {
    List<Integer> values = new ArrayList<>();
    for (int counts : wire.counts(from, n)) {
      values.add(counts >> 2);
    }
    return new Part(kind, from, PERIOD_TICKS, values, false);
  }

  /** Means of all readings of their spans. The last span may reach into the closing window. */
  private Part means(Wire wire, long from, long until) {
    long readings = (until - from) / PERIOD_TICKS;
    long span = 1;
    while (span * plateauMeans < readings) {
      span *= 2;
    }
    return new Part(
        Kind.PLATEAU, from, span * PERIOD_TICKS, meansOf(wire, from, until, span), false);
  }

  private static List<Integer> meansOf(Wire wire, long from, long until, long span) {
    List<Integer> values = new ArrayList<>();
    for (long at = from; at < until; at += span * PERIOD_TICKS) {
      int[] counts = wire.counts(at, (int) span);
      long sum = 0;
      for (int count : counts) {
        sum += count;
      }
      values.add((int) (READINGS_OF_A_SUM * sum / span));
    }
    return values;
  }
}
