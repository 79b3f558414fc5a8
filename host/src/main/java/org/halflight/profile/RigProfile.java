package org.halflight.profile;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;

/**
 * What is known about one rig from its calibration. What was not found is absent, and then nothing
 * is corrected for it.
 *
 * @param rig the rig it was made with
 * @param date when it was made
 * @param light the light it holds for
 * @param thresholds the thresholds of the centre sensor that pulses were measured at
 * @param tripPoints where the comparators really switch; only the channels that were swept
 * @param clock rate of the board's clock
 * @param lag of the front end
 * @param delays from crossing to stamp; only the channels that saw reference pulses
 * @param lines of measured against true widths; only the channels that saw reference pulses
 * @param shortestTrustworthySeconds from this width on, reference pulses agreed with the lines
 */
public record RigProfile(
    ProfiledRig rig,
    LocalDate date,
    LightRange light,
    Optional<ThresholdCounts> thresholds,
    Map<Channel, ComparatorTrips> tripPoints,
    Optional<ClockRate> clock,
    Optional<FrontEndLag> lag,
    Map<Channel, EdgeDelays> delays,
    Map<Channel, WidthLine> lines,
    OptionalDouble shortestTrustworthySeconds) {
  public RigProfile {
    tripPoints = inOrder(tripPoints);
    delays = inOrder(delays);
    lines = inOrder(lines);
    shortestTrustworthySeconds.ifPresent(
        seconds -> {
          if (!(seconds > 0 && Double.isFinite(seconds))) {
            throw new IllegalArgumentException("not the width of a pulse: " + seconds);
          }
        });
  }

  /** The same with another rate of the clock; its date stays that of all else in it. */
  public RigProfile withClock(ClockRate rate) {
    return new RigProfile(
        rig,
        date,
        light,
        thresholds,
        tripPoints,
        Optional.of(rate),
        lag,
        delays,
        lines,
        shortestTrustworthySeconds);
  }

  /**
   * What still holds of it when the board comes back as another kind of rig: the rate of its clock.
   * Empty where that was not measured; sensors, levels and lag are those of the front end.
   */
  public Optional<RigProfile> movedTo(ProfiledRig other) {
    return clock.map(
        rate ->
            new RigProfile(
                other,
                date,
                light,
                Optional.empty(),
                Map.of(),
                Optional.of(rate),
                Optional.empty(),
                Map.of(),
                Map.of(),
                OptionalDouble.empty()));
  }

  /** Whether reference pulses are in it, so that the rig can be checked against it. */
  public boolean hasPulses() {
    return !lines.isEmpty();
  }

  private static <V> Map<Channel, V> inOrder(Map<Channel, V> given) {
    Map<Channel, V> ordered = new EnumMap<>(Channel.class);
    ordered.putAll(given);
    return Collections.unmodifiableMap(ordered);
  }
}
