package org.halflight.exposure;

/**
 * The version of the way from edges to exposure times. Kept with every result, so that results of
 * two versions are never compared unawares.
 */
public final class ExposureMethodVersion {
  /**
   * Raised by one with every change that can move a figure. 2: the light curve gives a time of its
   * own, also to leaves that never open fully, and remarks on the edges. 3: the effective time is
   * all the light, early light and rebound with the main opening; light further off is a double. 4:
   * edges and light curve ask alike when such light begins, no longer when it ends.
   */
  public static final int CURRENT = 4;

  /** The first whose effective time is all the light; before it, that of the main opening. */
  public static final int ALL_THE_LIGHT = 3;

  private ExposureMethodVersion() {}
}
