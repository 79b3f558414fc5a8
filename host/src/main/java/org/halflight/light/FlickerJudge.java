package org.halflight.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * Judges a lamp by light blocks, taken with the shutter open or away and nothing moving.
 *
 * <p>The blocks are cut into stretches of 100 ms, whole numbers of cycles of 50, 60, 100 and 120 Hz
 * and short enough that mains half a hertz off do no harm. In each a wave is fitted to the block
 * means ({@link WaveFit}); the squares of its amplitude are averaged, less what noise alone gives,
 * and the smoothing of 16 readings is undone. What changes faster than a block shows as spread of
 * the readings within one: its median, less the slow change from block to block.
 *
 * <p>Not seen: ripple at a whole multiple of the 16 kHz at which readings are taken.
 */
public final class FlickerJudge {
  /** Mains flicker from here on, in percent: half of it is a level error, and 0.3 % must hold. */
  public static final double MAINS_LIMIT_PERCENT = 0.3;

  /** Drift over the blocks from here on, in percent. */
  public static final double DRIFT_LIMIT_PERCENT = 0.3;

  /** Wandering from here on, in percent. */
  public static final double REST_LIMIT_PERCENT = 0.5;

  /** Ripple within a millisecond from here on, in percent; below it is noise of the readings. */
  public static final double RIPPLE_LIMIT_PERCENT = 2;

  /** Less light than this above dark, in counts, shows no flicker. */
  public static final double LEAST_LIGHT_COUNTS = 50;

  /** A reading above this may be at the end of the scale. */
  public static final int SATURATED_COUNTS = 1015;

  private static final int STRETCH_BLOCKS = 100;
  private static final int LEAST_STRETCHES = 2;
  private static final int[] MAINS_HERTZ = {50, 60, 100, 120};
  private static final double BLOCK_SECONDS = 1e-3;
  private static final double READING_SECONDS = 62.5e-6;

  private FlickerJudge() {}

  /**
   * Judges.
   *
   * @param blocks in any order; of two with the same index the last counts
   * @param darkSum16 sum of 16 readings in the dark
   */
  public static LampLight judge(Collection<LightBlock> blocks, double darkSum16) {
    NavigableMap<Integer, LightBlock> byIndex = new TreeMap<>();
    blocks.forEach(block -> byIndex.put(block.index(), block));
    List<List<LightBlock>> stretches = stretches(byIndex);
    if (stretches.size() < LEAST_STRETCHES) {
      return new LampLight.Unknown(LampLight.Reason.TOO_FEW_BLOCKS);
    }
    if (byIndex.values().stream().anyMatch(block -> block.most() > SATURATED_COUNTS)) {
      return new LampLight.Unknown(LampLight.Reason.SATURATED);
    }
    double mean =
        byIndex.values().stream().mapToDouble(LightBlock::meanCounts).average().orElseThrow()
            - darkSum16 / LightBlock.READINGS;
    if (mean < LEAST_LIGHT_COUNTS) {
      return new LampLight.Unknown(LampLight.Reason.TOO_DARK);
    }
    return judge(figures(byIndex, stretches, mean));
  }

  private static LampLight judge(LampLight.Figures figures) {
    boolean mains = figures.mainsDepthPercent() >= MAINS_LIMIT_PERCENT;
    boolean ripple = figures.rippleDepthPercent() >= RIPPLE_LIMIT_PERCENT;
    if (ripple && figures.rippleDepthPercent() > figures.mainsDepthPercent()) {
      return new LampLight.FastRipple(figures.rippleDepthPercent(), figures);
    }
    if (Math.abs(figures.driftPercent()) >= DRIFT_LIMIT_PERCENT
        && Math.abs(figures.driftPercent()) > figures.mainsDepthPercent()) {
      return new LampLight.Unsteady(figures.driftPercent(), figures.restPercent(), figures);
    }
    if (mains) {
      return new LampLight.MainsFlicker(figures.mainsHertz(), figures.mainsDepthPercent(), figures);
    }
    if (figures.restPercent() >= REST_LIMIT_PERCENT) {
      return new LampLight.Unsteady(figures.driftPercent(), figures.restPercent(), figures);
    }
    return new LampLight.Steady(figures);
  }

  private static LampLight.Figures figures(
      NavigableMap<Integer, LightBlock> byIndex, List<List<LightBlock>> stretches, double mean) {
    int mainsHertz = 0;
    double depth = -1;
    double rest = 0;
    for (int hertz : MAINS_HERTZ) {
      double wave = 0;
      double noise = 0;
      for (List<LightBlock> stretch : stretches) {
        WaveFit fit = fit(stretch, hertz);
        // Noise alone gives each of the two parts of a wave a variance of 2 / n of its own.
        wave +=
            (fit.amplitude() * fit.amplitude() - 4 * fit.restVariance() / stretch.size())
                / stretches.size();
        noise += fit.restVariance() / stretches.size();
      }
      double percent = 100 * Math.sqrt(Math.max(0, wave)) / smoothing(hertz) / mean;
      if (percent > depth) {
        mainsHertz = hertz;
        depth = percent;
        rest = 100 * Math.sqrt(noise) / mean;
      }
    }
    double first = mean(stretches.get(0));
    double last = mean(stretches.get(stretches.size() - 1));
    return new LampLight.Figures(
        byIndex.size(),
        mean,
        mainsHertz,
        depth,
        100 * spreadWithinBlocks(byIndex) / 2 / mean,
        100 * (last - first) / mean,
        rest);
  }

  private static List<List<LightBlock>> stretches(NavigableMap<Integer, LightBlock> byIndex) {
    List<List<LightBlock>> stretches = new ArrayList<>();
    if (byIndex.isEmpty()) {
      return stretches;
    }
    int last = byIndex.lastKey();
    for (int from = byIndex.firstKey(); from <= last - STRETCH_BLOCKS / 2; from += STRETCH_BLOCKS) {
      List<LightBlock> stretch = List.copyOf(byIndex.subMap(from, from + STRETCH_BLOCKS).values());
      if (stretch.size() >= STRETCH_BLOCKS / 2) {
        stretches.add(stretch);
      }
    }
    return stretches;
  }

  private static WaveFit fit(List<LightBlock> stretch, int hertz) {
    return WaveFit.of(
        stretch.stream().mapToDouble(block -> block.index() * BLOCK_SECONDS).toArray(),
        stretch.stream().mapToDouble(LightBlock::meanCounts).toArray(),
        hertz);
  }

  /** What the mean of the 16 readings of a block leaves of a wave. */
  private static double smoothing(int hertz) {
    double angle = Math.PI * hertz * READING_SECONDS;
    return Math.sin(LightBlock.READINGS * angle) / (LightBlock.READINGS * Math.sin(angle));
  }

  private static double mean(List<LightBlock> stretch) {
    return stretch.stream().mapToDouble(LightBlock::meanCounts).average().orElseThrow();
  }

  private static double spreadWithinBlocks(NavigableMap<Integer, LightBlock> byIndex) {
    double[] spreads =
        byIndex.values().stream()
            .mapToDouble(
                block -> {
                  LightBlock before = byIndex.getOrDefault(block.index() - 1, block);
                  LightBlock after = byIndex.getOrDefault(block.index() + 1, block);
                  int apart = Math.max(1, after.index() - before.index());
                  double slow = Math.abs(after.meanCounts() - before.meanCounts()) / apart;
                  return Math.max(0, block.most() - block.least() - slow);
                })
            .sorted()
            .toArray();
    return Arrays.stream(spreads).skip(spreads.length / 2).findFirst().orElse(0);
  }
}
