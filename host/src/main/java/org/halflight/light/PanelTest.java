package org.halflight.light;

import java.util.List;

/**
 * A test of the panel of light in front of the lens: full light with the panel in place, with it
 * moved sideways by a radius of the pupil, and in place again. It limits how far light falls over
 * the pupil and corrects nothing.
 *
 * <p>Light {@code 1 - a r^2} of a panel in place fills the pupil to {@code 1 - a/2} of its middle.
 * Moved by one radius, the mean of {@code r^2} over the pupil is 3/2 and not 1/2, so that {@code 1
 * - 3a/2} is left. From the ratio R of the two follows {@code a = 2 (1 - R) / (3 - R)}. What stays
 * with lens and sensor when the panel moves is not seen.
 *
 * @param inPlace full less dark light with the panel in place, in any unit, above 0
 * @param moved the same with the panel moved, one for each way it was moved
 * @param inPlaceAgain the same with the panel back in place
 * @param standardUncertainty of each of these, in the same unit
 */
public record PanelTest(
    double inPlace, List<Double> moved, double inPlaceAgain, double standardUncertainty) {
  /** Covers 95 cases of 100 where the uncertainty is normal (JCGM 100, table G.1: 1.96). */
  private static final double COVERAGE = 1.96;

  public PanelTest {
    moved = List.copyOf(moved);
    if (!(inPlace > 0 && inPlaceAgain > 0) || moved.isEmpty() || !(standardUncertainty >= 0)) {
      throw new IllegalArgumentException("not a test of a panel: " + inPlace + ", " + moved);
    }
    for (double each : moved) {
      if (!Double.isFinite(each)) {
        throw new IllegalArgumentException("not a reading of light: " + each);
      }
    }
  }

  /**
   * The most by which light falls from the middle of the pupil to its edge, as a share: the largest
   * that any way of moving the panel gives, with what readings and lamp leave open. A panel that
   * gets brighter when moved counts by as much: it was not in the middle. 1 at most.
   */
  public double fallBound() {
    double mean = (inPlace + inPlaceAgain) / 2;
    double worst = 0;
    for (double each : moved) {
      double ratio = Math.max(0, each / mean);
      worst = Math.max(worst, Math.abs(2 * (1 - ratio) / Math.max(1, 3 - ratio)));
    }
    // A reading moved against the mean of two: by 1.5 of one variance. The lamp drifts evenly.
    double readings = COVERAGE * Math.sqrt(1.5) * standardUncertainty / mean;
    return Math.min(1, worst + readings + driftShare());
  }

  /** By how much full light changed between the readings in place, as a share. */
  public double driftShare() {
    return Math.abs(inPlaceAgain - inPlace) / ((inPlace + inPlaceAgain) / 2);
  }
}
