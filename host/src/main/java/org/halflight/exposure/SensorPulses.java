package org.halflight.exposure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * Light of one sensor at one level, in seconds from some time zero: one exposure, perhaps in parts.
 *
 * @param parts in order of time; may be empty
 * @param opensOnly it opened, and was not seen to close: when
 */
record SensorPulses(List<Part> parts, OptionalDouble opensOnly) {
  /** Curtains take up to some 35 ms over the frame, and as long to come back. */
  private static final double GAP_SECONDS = 50e-3;

  SensorPulses {
    parts = List.copyOf(parts);
  }

  /**
   * Light without a break.
   *
   * @param light the same less gaps too short to be more than noise
   */
  record Part(double from, double to, double light) {}

  static SensorPulses of(Firing firing, Channel channel, TickRate rate, long zeroTicks) {
    Pulses pulses = Pulses.of(firing, channel);
    List<Part> all = new ArrayList<>();
    for (Opening opening :
        Opening.join(pulses.pulses(), rate.ticks(LeafExposureMethod.CHATTER_GAP_SECONDS))) {
      all.add(
          new Part(
              rate.seconds(opening.startTicks() - zeroTicks),
              rate.seconds(opening.endTicks() - zeroTicks),
              rate.seconds(opening.lightTicks())));
    }
    OptionalDouble opens =
        pulses.stillHighSince().isPresent()
            ? OptionalDouble.of(rate.seconds(pulses.stillHighSince().getAsLong() - zeroTicks))
            : OptionalDouble.empty();
    return new SensorPulses(all, opens);
  }

  /** What is not too far from light at the centre to be one exposure with it. */
  SensorPulses near(double fromSeconds, double toSeconds) {
    return new SensorPulses(
        parts.stream()
            .filter(
                each ->
                    each.to() >= fromSeconds - GAP_SECONDS
                        && each.from() <= toSeconds + GAP_SECONDS)
            .toList(),
        opensOnly);
  }

  boolean isDark() {
    return parts.isEmpty() && opensOnly.isEmpty();
  }

  OptionalDouble opens() {
    return parts.isEmpty() ? opensOnly : OptionalDouble.of(parts.get(0).from());
  }

  /**
   * The part with which the second curtain covers the place: of several the one whose end is
   * nearest to when the other places let it be expected. What comes before is light with a dip in
   * it, what comes after is bounce.
   */
  int covers(OptionalDouble expectedSeconds) {
    int best = 0;
    for (int i = 1; i < parts.size(); i++) {
      boolean better =
          expectedSeconds.isPresent()
              ? Math.abs(parts.get(i).to() - expectedSeconds.getAsDouble())
                  < Math.abs(parts.get(best).to() - expectedSeconds.getAsDouble())
              : parts.get(i).light() > parts.get(best).light();
      best = better ? i : best;
    }
    return best;
  }

  /** All light of parts from one to another, both in it. */
  double light(int from, int to) {
    double sum = 0;
    for (int i = from; i <= to; i++) {
      sum += parts.get(i).light();
    }
    return sum;
  }
}
