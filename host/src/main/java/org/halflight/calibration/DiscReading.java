package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;

/**
 * What a rig says of the printed disc: the effective time of each slot as a part of the turn, and
 * how far that is from the slot's angle. Both times are of the same clock, so neither its rate nor
 * the speed of the disc matters.
 *
 * @param slots of the disc, narrow to wide
 * @param turnSeconds mean time of a turn, by the rig's clock
 * @param turns how many were whole
 */
public record DiscReading(List<Slot> slots, double turnSeconds, int turns) {
  /** The slots of the disc that this program prints, in degrees. */
  public static final List<Double> SLOT_DEGREES = List.of(3.6, 7.2, 14.4, 28.8, 57.6);

  /** Least whole turns. */
  public static final int LEAST_TURNS = 5;

  /** A slot that reads further off than this belongs to another disc, or an edge is missing. */
  private static final double GREATEST_RATIO = 1.3;

  /**
   * One slot.
   *
   * @param degrees as printed
   * @param effectiveSeconds mean effective time
   * @param error measured over printed part of the turn, less 1
   * @param errorSd standard deviation of the error from turn to turn
   */
  public record Slot(double degrees, double effectiveSeconds, double error, double errorSd) {}

  /** What edges come to. */
  public sealed interface Outcome {}

  /** A reading. */
  public record Found(DiscReading reading) implements Outcome {}

  /** Too few whole turns with all five slots in them. */
  public record TooFewTurns(int turns) implements Outcome {}

  public DiscReading {
    slots = List.copyOf(slots);
  }

  /**
   * @param edges of both channels of the centre, in order of time, their levels being the Gauss
   *     levels of the light through an open slot
   */
  public static Outcome of(List<Edge> edges, TickRate rate) {
    List<long[]> low = pulses(edges, Channel.CENTRE_LOW);
    List<long[]> high = pulses(edges, Channel.CENTRE_HIGH);
    List<Double> effective = new ArrayList<>();
    List<Long> middle = new ArrayList<>();
    int at = 0;
    for (long[] outer : low) {
      while (at < high.size() && high.get(at)[0] < outer[0]) {
        at++;
      }
      if (at < high.size() && high.get(at)[1] <= outer[1]) {
        effective.add(rate.seconds(outer[1] - outer[0] + high.get(at)[1] - high.get(at)[0]) / 2);
        middle.add(outer[0] + (outer[1] - outer[0]) / 2);
      }
    }
    int count = SLOT_DEGREES.size();
    Map<Double, List<Double>> errors = new TreeMap<>();
    Map<Double, List<Double>> times = new TreeMap<>();
    List<Double> turns = new ArrayList<>();
    for (int i = 0; i + count < middle.size(); i++) {
      double turn = rate.seconds(middle.get(i + count) - middle.get(i));
      double measured = 360 * effective.get(i) / turn;
      double slot =
          SLOT_DEGREES.stream()
              .min((a, b) -> Double.compare(off(a, measured), off(b, measured)))
              .orElseThrow();
      if (off(slot, measured) <= Math.log(GREATEST_RATIO)) {
        errors.computeIfAbsent(slot, s -> new ArrayList<>()).add(measured / slot - 1);
        times.computeIfAbsent(slot, s -> new ArrayList<>()).add(effective.get(i));
        turns.add(turn);
      }
    }
    int whole = errors.values().stream().mapToInt(List::size).min().orElse(0);
    if (errors.size() < count || whole < LEAST_TURNS) {
      return new TooFewTurns(errors.size() < count ? 0 : whole);
    }
    List<Slot> slots = new ArrayList<>();
    errors.forEach(
        (degrees, all) ->
            slots.add(
                new Slot(
                    degrees,
                    Sample.of(times.get(degrees)).mean().get(),
                    Sample.of(all).mean().get(),
                    Sample.of(all).sd().get())));
    return new Found(new DiscReading(slots, Sample.of(turns).mean().get(), whole));
  }

  private static double off(double slot, double measured) {
    return Math.abs(Math.log(measured / slot));
  }

  private static List<long[]> pulses(List<Edge> edges, Channel channel) {
    List<long[]> pulses = new ArrayList<>();
    long rise = -1;
    for (Edge edge : edges) {
      if (edge.channel() != channel) {
        continue;
      }
      if (edge.high()) {
        rise = edge.ticks();
      } else if (rise >= 0) {
        pulses.add(new long[] {rise, edge.ticks()});
        rise = -1;
      }
    }
    return pulses;
  }
}
