package org.halflight.exposure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.exposure.Exposure.Reason;
import org.halflight.exposure.Exposure.Unusable;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulses;
import org.halflight.stored.StoredWords;
import org.halflight.time.TickRate;

/**
 * Exposure with a rig that has one comparator, whose threshold stands at the low level for one
 * firing and at the high level for the next.
 *
 * <p>The effective time is the mean of the widths at the two levels (see {@link TwoLevelRule}), and
 * no single firing has both. So the <em>gap</em>, by how much the light stays longer above the low
 * level than above the high one, is taken from the other firings of the same speed at either level,
 * and each firing is completed with it: the missing crossings stand half a gap within, or outside,
 * its own. The mean over as many firings at one level as at the other then is the mean of the two
 * mean widths, but for how the gaps differ. The scatter of the figures is that of the shutter and
 * somewhat more, as each gap scatters too: by 23 % with four firings, 8 % with ten (computed for
 * equal normal scatter at either level). With its own width in the gap a firing would be pulled to
 * the mean, and one firing at either level would seem not to scatter at all.
 *
 * <p>What that cannot see: blades that never open fully in one firing and do in the next, and an
 * opening that is slower than the closing.
 */
public final class AlternatingLevels {
  /** At which of the two levels the one threshold stood. */
  public enum Level {
    LOW,
    HIGH;

    /** As files store them. */
    public static final StoredWords<Level> WORDS =
        StoredWords.of(
            Level.class,
            level ->
                switch (level) {
                  case LOW -> "low";
                  case HIGH -> "high";
                });
  }

  private AlternatingLevels() {}

  /** The time above its level in the main opening of a firing, in seconds; empty without one. */
  public static OptionalDouble widthSeconds(Firing firing, TickRate rate) {
    return OneLevelMethod.widthSeconds(firing, Channel.CENTRE_LOW, rate);
  }

  /**
   * The gap between the widths at the two levels, in seconds: median less median, so that one
   * firing that hung does not move it; never below zero. Empty until either level was seen.
   */
  public static OptionalDouble gapSeconds(
      List<Double> lowWidthsSeconds, List<Double> highWidthsSeconds) {
    if (lowWidthsSeconds.isEmpty() || highWidthsSeconds.isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(Math.max(0, median(lowWidthsSeconds) - median(highWidthsSeconds)));
  }

  /**
   * Measures a firing of one level. Its light stands on the channel of the low level, whatever the
   * threshold was.
   *
   * @param own where the threshold stood
   * @param gapSeconds see {@link #gapSeconds}; without it there is no effective time yet
   * @param levels the two levels
   * @param nowTicks the shutter is known to have stayed as the last edges left it until this time
   */
  public static Exposure measure(
      Firing firing,
      Level own,
      OptionalDouble gapSeconds,
      LevelPair levels,
      TickRate rate,
      long nowTicks) {
    Pulses pulses = Pulses.of(firing, Channel.CENTRE_LOW);
    boolean closed = !pulses.isEmpty() && pulses.stillHighSince().isEmpty();
    if (!firing.damage().isEmpty() || pulses.startsHigh() || !closed) {
      return LeafExposureMethod.measure(firing, levels, rate, nowTicks);
    }
    if (gapSeconds.isEmpty()) {
      return new Unusable(Reason.OTHER_LEVEL_WANTED, List.of());
    }
    long halfGap = rate.ticks(gapSeconds.getAsDouble() / 2);
    return LeafExposureMethod.measure(
        own == Level.LOW ? withHigh(firing, rate, halfGap) : withLow(firing, pulses, rate, halfGap),
        levels,
        rate,
        nowTicks);
  }

  private static Firing withHigh(Firing firing, TickRate rate, long halfGap) {
    List<Edge> edges = new ArrayList<>(firing.edges());
    // A rebound's too: the same blades move as fast.
    for (Opening opening :
        Opening.join(
            Pulses.of(firing, Channel.CENTRE_LOW).pulses(),
            rate.ticks(LeafExposureMethod.CHATTER_GAP_SECONDS))) {
      long rise = opening.startTicks() + halfGap;
      long fall = opening.endTicks() - halfGap;
      if (rise < fall) {
        edges.add(new Edge(Channel.CENTRE_HIGH, true, rise));
        edges.add(new Edge(Channel.CENTRE_HIGH, false, fall));
      }
    }
    return sorted(edges);
  }

  private static Firing withLow(Firing firing, Pulses pulses, TickRate rate, long halfGap) {
    List<Edge> edges = new ArrayList<>();
    for (Edge edge : firing.edges()) {
      edges.add(
          edge.channel() == Channel.CENTRE_LOW
              ? new Edge(Channel.CENTRE_HIGH, edge.high(), edge.ticks())
              : edge);
    }
    long joinTicks = Math.max(2 * halfGap, rate.ticks(LeafExposureMethod.CHATTER_GAP_SECONDS));
    for (Opening opening : Opening.join(pulses.pulses(), joinTicks)) {
      edges.add(new Edge(Channel.CENTRE_LOW, true, opening.startTicks() - halfGap));
      edges.add(new Edge(Channel.CENTRE_LOW, false, opening.endTicks() + halfGap));
    }
    return sorted(edges);
  }

  private static Firing sorted(List<Edge> edges) {
    edges.sort(Comparator.comparingLong(Edge::ticks));
    return new Firing(edges, List.of());
  }

  private static double median(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int middle = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(middle)
        : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
  }
}
