package org.halflight.bench;

import java.util.List;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigMessage;

/**
 * The light behind a turning disc: between two slots it is that of a closed shutter, in a wide slot
 * that of an open one. Both show as milliseconds within which the light does not move.
 *
 * @param darkCounts between slots
 * @param fullCounts in a wide slot
 */
public record DiscLight(double darkCounts, double fullCounts) {
  /** What light comes to. */
  public sealed interface Outcome {}

  /** Levels can be placed. */
  public record Found(DiscLight light, ThresholdCodes codes) implements Outcome {}

  /** The light does not change: nothing passes it. */
  public record Still(double counts) implements Outcome {}

  /** Slots do not come to rest at one light: the lamp flickers, or they never free all of it. */
  public record Unsteady(double share) implements Outcome {}

  /** The light is too bright, too dim, or not dark between the slots. */
  public record Refused(LightLevels.Reason reason) implements Outcome {}

  private static final double SWING_LEAST_COUNTS = 20;

  /** A millisecond within which readings differ by no more is steady: noise of the converter. */
  private static final double STEADY_COUNTS = 6;

  private static final double STEADY_SHARE = 0.015;

  /** Beyond this the levels of a slot hang on when it comes. */
  private static final double FLICKER_MOST = 0.02;

  private static final int LEAST_BLOCKS = 8;

  static Outcome of(List<RigMessage.LightBlock> blocks, TripPoints trips) {
    int least = blocks.stream().mapToInt(RigMessage.LightBlock::least).min().orElse(0);
    int most = blocks.stream().mapToInt(RigMessage.LightBlock::most).max().orElse(0);
    if (most > LightLevels.SATURATED_COUNTS) {
      return new Refused(LightLevels.Reason.SATURATED);
    }
    if (most - least < SWING_LEAST_COUNTS) {
      return new Still((most + least) / 2.0);
    }
    double[] dark = steady(blocks, least, most, false);
    double[] full = steady(blocks, least, most, true);
    if (dark.length < LEAST_BLOCKS || full.length < LEAST_BLOCKS) {
      return new Unsteady(1);
    }
    double flicker = (at(full, 0.95) - at(full, 0.05)) / at(full, 0.5);
    if (flicker > FLICKER_MOST) {
      return new Unsteady(flicker);
    }
    DiscLight light = new DiscLight(at(dark, 0.5), at(full, 0.5));
    ThresholdCodes.Outcome codes =
        ThresholdCodes.forLight(light.darkCounts, light.fullCounts, trips);
    return codes instanceof ThresholdCodes.Found found
        ? new Found(light, found.codes())
        : new Refused(((ThresholdCodes.Refused) codes).reason());
  }

  /** Means of the milliseconds that are steady and bright, or steady and dark; rising. */
  private static double[] steady(
      List<RigMessage.LightBlock> blocks, int least, int most, boolean bright) {
    double swing = Math.max(STEADY_COUNTS, STEADY_SHARE * (most - least));
    double middle = (most + least) / 2.0;
    return blocks.stream()
        .filter(block -> block.most() - block.least() <= swing)
        .mapToDouble(block -> block.sum16() / 16.0)
        .filter(counts -> counts > middle == bright)
        .sorted()
        .toArray();
  }

  private static double at(double[] sorted, double share) {
    return sorted[(int) Math.round(share * (sorted.length - 1))];
  }
}
