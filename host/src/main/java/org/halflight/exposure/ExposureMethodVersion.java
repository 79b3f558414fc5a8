package org.halflight.exposure;

/**
 * The version of the way from edges to exposure times. Kept with every result, so that results of
 * two versions are never compared unawares.
 */
public final class ExposureMethodVersion {
  /**
   * Raised by one with every change that can move a figure. 2: the light curve gives a time of its
   * own, also to leaves that never open fully, and remarks on the edges.
   */
  public static final int CURRENT = 2;

  private ExposureMethodVersion() {}
}
