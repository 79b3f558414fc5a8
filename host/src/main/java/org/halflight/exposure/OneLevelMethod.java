package org.halflight.exposure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * Exposure from one light level, for a rig or a sensor that has no second one. The width at one
 * level is no effective time: it wants a correction for leaf travel, and that wants the opening and
 * closing times from elsewhere.
 */
public final class OneLevelMethod {
  private OneLevelMethod() {}

  /**
   * The main opening of a channel, empty where the firing is damaged, the channel was high before
   * the firing or is still high, or it saw no light.
   */
  public static Optional<Opening> mainOpening(Firing firing, Channel channel, TickRate rate) {
    Pulses pulses = Pulses.of(firing, channel);
    if (!firing.damage().isEmpty() || pulses.startsHigh() || pulses.stillHighSince().isPresent()) {
      return Optional.empty();
    }
    List<Opening> openings =
        Opening.join(pulses.pulses(), rate.ticks(LeafExposureMethod.CHATTER_GAP_SECONDS));
    return openings.stream().max(Comparator.comparingLong(Opening::lightTicks));
  }

  /** The time above the level in the main opening, in seconds. */
  public static OptionalDouble widthSeconds(Firing firing, Channel channel, TickRate rate) {
    Optional<Opening> main = mainOpening(firing, channel, rate);
    return main.isPresent()
        ? OptionalDouble.of(rate.seconds(main.get().lightTicks()))
        : OptionalDouble.empty();
  }

  /**
   * The effective time from the width at a level, by {@link LeafTravel#effectiveSeconds}, for both
   * laws.
   *
   * @param openingPlusClosingSeconds opening plus closing time by both laws, as a two-level
   *     measurement of the same shutter gave them
   */
  public static ByLaw effectiveSeconds(
      double widthSeconds, double level, ByLaw openingPlusClosingSeconds) {
    return ByLaw.of(
        law ->
            LeafTravel.effectiveSeconds(
                widthSeconds, level, openingPlusClosingSeconds.under(law), law));
  }
}
