package org.halflight.session;

import java.util.List;

/**
 * Whether the verdict on a speed is in, so that it needs no more firings. The session itself judges
 * nothing.
 */
@FunctionalInterface
public interface VerdictIsIn {
  /**
   * @param setup of the run
   * @param firings of the run at one speed that say something about the shutter and count
   */
  boolean of(RunSetup setup, List<FiringResult> firings);
}
