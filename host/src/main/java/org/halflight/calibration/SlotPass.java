package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.Crossings;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.LevelCorrection;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.ProfileCorrection;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * One slot that passed the light, measured just as a firing of a shutter is: by the same levels,
 * the same rule and the same profile.
 *
 * @param middleSeconds of the light, in the time of the rig
 * @param effectiveSeconds of the slot; meaningless where it is not whole
 * @param rampSeconds from the low level to the high one, mean of opening and closing
 * @param whole whether the slot freed the whole light and nothing else was wrong with it
 * @param timed how the method measured it; empty where it could not
 */
record SlotPass(
    double middleSeconds,
    double effectiveSeconds,
    double rampSeconds,
    boolean whole,
    Optional<Exposure.Timed> timed) {
  /** Dark for longer than this ends a slot; shorter dark is noise at a slow crossing. */
  private static final double DARK_SECONDS = 1e-3;

  /**
   * All passes, in order of time.
   *
   * @param levels where rising and falling light is seen
   */
  static List<SlotPass> of(
      List<Edge> edges,
      TickRate rate,
      LevelCorrection levels,
      Optional<ProfileCorrection> profile) {
    List<SlotPass> passes = new ArrayList<>();
    for (Firing measured : apart(edges, rate)) {
      Firing firing = profile.map(known -> known.firing(measured, rate)).orElse(measured);
      passes.add(pass(firing, rate, levels));
    }
    return passes;
  }

  private static SlotPass pass(Firing firing, TickRate rate, LevelCorrection levels) {
    Exposure exposure = LeafExposureMethod.measure(firing, middle(levels), rate);
    if (exposure instanceof Exposure.Timed timed) {
      Crossings at = timed.crossings();
      double middle =
          (rate.seconds(at.lowRiseTicks())
                  + rate.seconds(at.highRiseTicks())
                  + rate.seconds(at.lowFallTicks())
                  + rate.seconds(at.highFallTicks()))
              / 4;
      double ramp =
          rate.seconds(
                  at.highRiseTicks() - at.lowRiseTicks() + at.lowFallTicks() - at.highFallTicks())
              / 2;
      return new SlotPass(
          middle,
          levels.effectiveSeconds(timed, rate, 1, 1),
          ramp,
          timed.countsAsFullyOpen(),
          Optional.of(timed));
    }
    double middle = (rate.seconds(firing.firstTicks()) + rate.seconds(firing.lastTicks())) / 2;
    return new SlotPass(
        middle, rate.seconds(firing.lastTicks() - firing.firstTicks()), 0, false, Optional.empty());
  }

  private static LevelPair middle(LevelCorrection levels) {
    return new LevelPair(
        (levels.rising().low() + levels.falling().low()) / 2,
        (levels.rising().high() + levels.falling().high()) / 2);
  }

  /** The edges of the centre sensor, cut where it is dark. */
  private static List<Firing> apart(List<Edge> edges, TickRate rate) {
    List<Firing> firings = new ArrayList<>();
    List<Edge> now = new ArrayList<>();
    long darkSince = Long.MIN_VALUE;
    for (Edge edge : edges) {
      boolean low = edge.channel() == Channel.CENTRE_LOW;
      if (!low && edge.channel() != Channel.CENTRE_HIGH) {
        continue;
      }
      if (edge.high()
          && darkSince != Long.MIN_VALUE
          && edge.ticks() - darkSince > rate.ticks(DARK_SECONDS)) {
        firings.add(new Firing(now, List.of()));
        now = new ArrayList<>();
        darkSince = Long.MIN_VALUE;
      }
      if (low) {
        darkSince = edge.high() ? Long.MIN_VALUE : edge.ticks();
      }
      now.add(edge);
    }
    if (darkSince != Long.MIN_VALUE) {
      firings.add(new Firing(now, List.of()));
    }
    return firings;
  }
}
