package org.halflight.light;

/**
 * What a second or so of steady light says about the lamp. Depths are in percent of the mean light
 * less dark; the depth of a wave is half its swing over its mean, 100 % when it goes down to dark.
 */
public sealed interface LampLight {
  /**
   * What the blocks came to, whatever the finding.
   *
   * @param blocks how many there were
   * @param meanCounts mean light less dark, in counts of the converter
   * @param mainsHertz the mains-borne frequency with the deepest wave: 50, 60, 100 or 120
   * @param mainsDepthPercent the depth of that wave, its first harmonic only
   * @param rippleDepthPercent depth of what changes within a millisecond, noise included
   * @param driftPercent change from the first tenth of a second to the last
   * @param restPercent standard deviation of what no wave and no drift explains
   */
  record Figures(
      int blocks,
      double meanCounts,
      int mainsHertz,
      double mainsDepthPercent,
      double rippleDepthPercent,
      double driftPercent,
      double restPercent) {}

  /** Fit to measure by, as far as the blocks tell. */
  record Steady(Figures figures) implements LampLight {}

  /** The light follows the mains. */
  record MainsFlicker(int hertz, double depthPercent, Figures figures) implements LampLight {}

  /** The light changes within a millisecond: a lamp dimmed by switching, mostly. */
  record FastRipple(double depthPercent, Figures figures) implements LampLight {}

  /** The light drifts, steps or wanders: a lamp warming up, something that moves before it. */
  record Unsteady(double driftPercent, double restPercent, Figures figures) implements LampLight {}

  /** The blocks do not tell. */
  record Unknown(Reason reason) implements LampLight {}

  /** Why the blocks do not tell. */
  enum Reason {
    /** Less than two tenths of a second of blocks with at most half of them missing. */
    TOO_FEW_BLOCKS,
    /** Too little light above dark to see flicker. */
    TOO_DARK,
    /** Light at the end of the scale, which would hide flicker. */
    SATURATED
  }
}
