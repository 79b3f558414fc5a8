package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.Opening;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;
import org.halflight.time.TickRate;

/**
 * How a shutter lets light through when it is cocked, learnt from a few strokes. A hand is no
 * motor: later strokes may be slower or faster than those that were learnt by {@link #TIME_SLACK},
 * with one flash of light more or less, and as bright within {@link #BRIGHT_SLACK}.
 *
 * @param strokes the strokes that it was learnt from, {@link #STROKES}
 */
public record CockingPattern(List<Stroke> strokes) {
  /** Strokes to learn from. */
  public static final int STROKES = 3;

  /** Times may be longer or shorter than any stroke learnt by this factor. */
  public static final double TIME_SLACK = 1.5;

  /** The bright share may be above or below that of any stroke learnt by this. */
  public static final double BRIGHT_SLACK = 0.15;

  /** Strokes whose times differ by more than this factor are not alike, and nothing is learnt. */
  public static final double ALIKE_FACTOR = 2;

  /**
   * One stroke.
   *
   * @param flashes times that light came and went, chatter left out
   * @param lightSeconds time above the low level
   * @param spanSeconds from first to last light at the low level
   * @param brightShare time above the high level as a share of that above the low one
   */
  public record Stroke(int flashes, double lightSeconds, double spanSeconds, double brightShare) {
    /** The stroke that a firing shows; empty where the light is not whole. */
    static Optional<Stroke> of(Firing firing, TickRate rate) {
      Pulses low = Pulses.of(firing, Channel.CENTRE_LOW);
      Pulses high = Pulses.of(firing, Channel.CENTRE_HIGH);
      boolean whole =
          firing.damage().isEmpty()
              && !low.startsHigh()
              && low.stillHighSince().isEmpty()
              && !low.pulses().isEmpty();
      if (!whole) {
        return Optional.empty();
      }
      List<Opening> flashes =
          Opening.join(low.pulses(), rate.ticks(LeafExposureMethod.CHATTER_GAP_SECONDS));
      long light = flashes.stream().mapToLong(Opening::lightTicks).sum();
      if (light == 0) {
        return Optional.empty();
      }
      long bright = high.pulses().stream().mapToLong(Pulse::ticks).sum();
      return Optional.of(
          new Stroke(
              flashes.size(),
              rate.seconds(light),
              rate.seconds(
                  flashes.get(flashes.size() - 1).endTicks() - flashes.get(0).startTicks()),
              (double) bright / light));
    }
  }

  public CockingPattern {
    strokes = List.copyOf(strokes);
    if (strokes.size() != STROKES) {
      throw new IllegalArgumentException(
          "a pattern is learnt from " + STROKES + " strokes, not " + strokes.size());
    }
  }

  /** Whether the strokes are alike enough to know others by them. */
  boolean isAlike() {
    return most(Stroke::lightSeconds) <= ALIKE_FACTOR * least(Stroke::lightSeconds)
        && most(Stroke::spanSeconds) <= ALIKE_FACTOR * least(Stroke::spanSeconds);
  }

  /** Whether light is that of a stroke. */
  boolean matches(Stroke stroke) {
    return isWithinTimes(stroke.lightSeconds(), Stroke::lightSeconds)
        && isWithinTimes(stroke.spanSeconds(), Stroke::spanSeconds)
        && stroke.brightShare() >= least(Stroke::brightShare) - BRIGHT_SLACK
        && stroke.brightShare() <= most(Stroke::brightShare) + BRIGHT_SLACK
        && stroke.flashes() >= least(Stroke::flashes) - 1
        && stroke.flashes() <= most(Stroke::flashes) + 1;
  }

  private boolean isWithinTimes(double seconds, ToDoubleFunction<Stroke> time) {
    return seconds >= least(time) / TIME_SLACK && seconds <= most(time) * TIME_SLACK;
  }

  private double least(ToDoubleFunction<Stroke> of) {
    return strokes.stream().mapToDouble(of).min().orElseThrow();
  }

  private double most(ToDoubleFunction<Stroke> of) {
    return strokes.stream().mapToDouble(of).max().orElseThrow();
  }
}
