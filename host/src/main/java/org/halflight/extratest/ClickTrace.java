package org.halflight.extratest;

import java.util.List;
import java.util.Optional;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.LeafExposureMethod;
import org.halflight.exposure.Opening;
import org.halflight.session.FiringResult;
import org.halflight.signal.Channel;
import org.halflight.signal.Pulse;
import org.halflight.signal.Pulses;

/**
 * What was heard, and what a contact did, around the opening of one firing.
 *
 * @param openingTicks when the light of the main opening rose through the low level, which is a
 *     fifth of full light
 * @param closingTicks when the blades started to close, as near as the levels tell
 * @param darkTicks when the light was gone
 * @param heard clicks of the click sensor within {@link #REACH_SECONDS} of the opening
 * @param touched moves of the contact, likewise
 * @param contactIsFlash whether the contact opened again when the blades closed, as a flash contact
 *     does
 */
record ClickTrace(
    long openingTicks,
    long closingTicks,
    long darkTicks,
    List<Click> heard,
    List<Click> touched,
    boolean contactIsFlash) {
  /** What is further from the opening than this has nothing to do with it. Our own limit. */
  static final double REACH_SECONDS = 0.06;

  /** A flash contact opens this near to the closing, in seconds. */
  private static final double FLASH_SLACK_SECONDS = 0.003;

  /** What a firing sounded like; empty where its opening was not seen. */
  static Optional<ClickTrace> of(FiringResult firing) {
    Optional<Opening> main = opening(firing);
    if (main.isEmpty()) {
      return Optional.empty();
    }
    long opening = main.get().startTicks();
    long dark = main.get().endTicks();
    long closing =
        firing.exposure() instanceof Exposure.Timed timed
            ? timed.crossings().highFallTicks()
            : dark;
    long reach = firing.rate().ticks(REACH_SECONDS);
    Clicks heard = Clicks.of(firing.firing(), Channel.CLICK, firing.rate());
    Clicks touched = Clicks.of(firing.firing(), Channel.CONTACT, firing.rate());
    return Optional.of(
        new ClickTrace(
            opening,
            closing,
            dark,
            heard.between(opening - reach, opening + reach),
            touched.between(opening - reach, opening + reach),
            isFlash(firing, opening, closing, dark)));
  }

  /** The longest opening at the one level that every rig has. */
  private static Optional<Opening> opening(FiringResult firing) {
    if (firing.firing().damage().size() > 0) {
      return Optional.empty();
    }
    Pulses low = Pulses.of(firing.firing(), Channel.CENTRE_LOW);
    if (low.stillHighSince().isPresent()) {
      long since = low.stillHighSince().getAsLong();
      return Optional.of(
          new Opening(List.of(new Pulse(since, Math.max(since, firing.firing().lastTicks())))));
    }
    long join = firing.rate().ticks(LeafExposureMethod.CHATTER_GAP_SECONDS);
    return Opening.join(low.pulses(), join).stream()
        .max(java.util.Comparator.comparingLong(Opening::lightTicks));
  }

  private static boolean isFlash(FiringResult firing, long opening, long closing, long dark) {
    long slack = firing.rate().ticks(FLASH_SLACK_SECONDS);
    long reach = firing.rate().ticks(REACH_SECONDS);
    return Pulses.of(firing.firing(), Channel.CONTACT).pulses().stream()
        .anyMatch(
            pulse ->
                pulse.startTicks() >= opening - reach
                    && pulse.startTicks() <= dark
                    && pulse.endTicks() >= closing - slack
                    && pulse.endTicks() <= dark + slack);
  }
}
