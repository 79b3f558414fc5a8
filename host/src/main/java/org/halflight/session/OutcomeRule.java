package org.halflight.session;

import java.util.Optional;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;
import org.halflight.time.TickRate;

/**
 * Which outcome a release has that is no light of cocking.
 *
 * <p>A release is double by when the light came, and not by how much it was: blades that rebound
 * within {@link org.halflight.exposure.LeafExposureMethod#EXPOSURE_GAP_SECONDS} give one exposure
 * on the film however far they open, and what opens later gives two.
 */
public final class OutcomeRule {
  private OutcomeRule() {}

  /**
   * The outcome of a firing.
   *
   * @param check what was shown, where that was a check
   * @param capOn whether the lens cap was on
   */
  public static Outcome of(
      Firing firing, Exposure exposure, TickRate rate, Optional<UntimedTest> check, boolean capOn) {
    if (exposure instanceof Exposure.Unusable unusable) {
      if (unusable.reason() != Exposure.Reason.NO_LIGHT) {
        return Outcome.UNUSABLE;
      }
      // Behind a cap no light is no news of the shutter; a release that is only let go is none.
      return ReleaseTiming.isPressed(firing) && !capOn
          ? Outcome.DID_NOT_OPEN
          : Outcome.NOT_A_SHUTTER_EVENT;
    }
    if (exposure instanceof Exposure.StuckOpen) {
      return Outcome.STUCK_OPEN;
    }
    if (exposure instanceof Exposure.NeverFullyOpen) {
      return Outcome.NEVER_FULLY_OPEN;
    }
    Exposure.Timed timed = (Exposure.Timed) exposure;
    if (timed.isDouble()) {
      return Outcome.DOUBLE;
    }
    return check
        .filter(UntimedTest::holds)
        .map(asked -> HoldRule.of(asked, firing, timed, rate))
        .orElse(Outcome.TIMED);
  }
}
