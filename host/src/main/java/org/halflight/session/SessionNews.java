package org.halflight.session;

import java.util.OptionalDouble;
import org.halflight.exposure.LeafExposure;
import org.halflight.speeds.MarkedSpeed;

/** Something that a session has to tell. */
public sealed interface SessionNews {
  /**
   * The main closing was seen; the figure may still move a little until the quiet time has passed.
   *
   * @param errorStops where a speed is shown
   */
  record Provisional(LeafExposure exposure, OptionalDouble errorStops) implements SessionNews {}

  /**
   * The shutter has been open for longer than expected.
   *
   * @param seconds since it opened
   */
  record StillOpen(double seconds) implements SessionNews {}

  /** A firing is over and settled. */
  record Settled(FiringResult result) implements SessionNews {}

  /** A firing is not counted any more. */
  record Rejected(FiringResult result) implements SessionNews {}

  /**
   * A speed is shown.
   *
   * @param good good firings of it so far
   * @param wanted good firings asked for
   */
  record SpeedShown(MarkedSpeed speed, int good, int wanted) implements SessionNews {}

  /** Ten tries did not bring the firings asked for: enough to know that this speed is erratic. */
  record EnoughToKnow(MarkedSpeed speed, int tries, int good) implements SessionNews {}

  /** Every speed of the run has its firings. */
  record RunDone() implements SessionNews {}
}
