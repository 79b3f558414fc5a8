package org.halflight.exposure;

/**
 * The version of the way from edges to exposure times. Kept with every result, so that results of
 * two versions are never compared unawares.
 */
public final class ExposureMethodVersion {
  /** Raised by one with every change that can move a figure. */
  public static final int CURRENT = 1;

  private ExposureMethodVersion() {}
}
