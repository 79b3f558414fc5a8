package org.halflight.session;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurtainNote;
import org.halflight.exposure.Exposure;
import org.halflight.profile.ClockRate;
import org.halflight.speeds.MarkedSpeed;

/** Something that a session has to tell. */
public sealed interface SessionEvent {
  /** Something new of a firing that is over. */
  sealed interface OfFiring extends SessionEvent {
    /** The firing as it is now. */
    FiringResult result();
  }

  /** Curtains are measured at the centre of the frame only; said once in a run. */
  record CurtainsAtTheCentre(CentreOnly why) implements SessionEvent {}

  /** Something about the set-up before the curtains wants a look; each said once in a run. */
  record CurtainsNoted(CurtainNote note) implements SessionEvent {}

  /** The rig sees one level of light at a time: a speed has a time from its second firing on. */
  record OneLevelRig(boolean fixed) implements SessionEvent {}

  /**
   * The main closing was seen; the figure may still move a little until the quiet time has passed.
   *
   * @param errorStops where a speed is shown
   */
  record Provisional(Exposure exposure, OptionalDouble errorStops) implements SessionEvent {}

  /**
   * The shutter has been open for longer than expected.
   *
   * @param seconds since it opened
   */
  record StillOpen(double seconds) implements SessionEvent {}

  /**
   * A firing is over and settled. One whose key was settled before takes the place of the earlier
   * one: the release was pressed, and the light came much later.
   */
  record Settled(FiringResult result) implements OfFiring {}

  /** A settled firing is seen otherwise now, by its key; its raw edges are the same. */
  record Changed(FiringResult result) implements OfFiring {}

  /** The light curve of a settled firing has come, and has its say about the time. */
  record CurveAdded(FiringResult result) implements OfFiring {}

  /** The knob contact moved near a settled firing after it was over; nothing else of it changes. */
  record KnobAdded(FiringResult result) implements OfFiring {}

  /** An act of the person was undone: all is as if it had not been. */
  record Undone(SessionInput.UserAction act) implements SessionEvent {}

  /** An act that was undone counts again. */
  record Redone(SessionInput.UserAction act) implements SessionEvent {}

  /** What the person wished was not done. */
  record NotDone(Why why) implements SessionEvent {
    /** Why it was not. */
    public enum Why {
      /** Nothing that was done is left to undo. */
      NOTHING_TO_UNDO,
      /** Nothing was undone, or something was done since. */
      NOTHING_TO_REDO,
      /** The marks of the session file have no numbers: an earlier version began it. */
      SESSION_OF_OLD_FORM,
      /** No firing of this run counts that could be rejected. */
      NOTHING_TO_REJECT,
      /** No such firing is rejected, so that no reason can be changed. */
      NOT_REJECTED,
      /** A wind key while the linkage is not led. */
      NO_LINKAGE_TEST,
      /** A wind key while the shutter is open, after one for the same press. */
      PRESS_UNDER_WAY,
      /** A wind key twice within a second, with no firing in between. */
      PRESS_COUNTED_ALREADY,
      /** There is no firing yet that a condition could be said of. */
      NO_FIRING_YET,
      /** Two speeds at once in a run that does not adjust. */
      NOT_ADJUSTING
    }
  }

  /** A press of the linkage test was judged. */
  record PressCounted(LinkagePress press) implements SessionEvent {}

  /** The knob contact is no help with this press, or not on this rig. */
  record KnobContact(KnobTrouble what) implements SessionEvent {}

  /** A screw plunger was read. */
  record PlungerWasRead(PlungerReading reading) implements SessionEvent {}

  /** The person said under which special conditions a firing was made. */
  record FiringIsUnder(FiringResult result) implements OfFiring {}

  /** The special conditions that hold from the next firing on. */
  record ConditionsHold(FiringConditions conditions) implements SessionEvent {}

  /** A firing is not counted any more. */
  record Rejected(FiringResult result) implements OfFiring {}

  /** A firing is not counted for another reason than was said before. */
  record ReasonChanged(FiringResult result) implements OfFiring {}

  /**
   * A marked speed or a setting without a time is shown.
   *
   * @param good good firings of it so far
   * @param wanted good firings of each speed that the run asks for; 0 without a run
   * @param quick whether the run is a quick look, in which each firing is of another setting
   */
  record SettingShown(DialSetting setting, int good, int wanted, boolean quick)
      implements SessionEvent {}

  /** This is the top speed, and the camera wants it set before cocking. Trade custom. */
  record SetBeforeCocking(MarkedSpeed speed) implements SessionEvent {}

  /** So many tries did not bring the firings asked for: enough to know that a speed is erratic. */
  record EnoughToKnow(MarkedSpeed speed, int tries, int good) implements SessionEvent {}

  /** Ten tries did not bring a test without a marked time to its end. */
  record EnoughOfUntimedTest(UntimedTest test, int tries) implements SessionEvent {}

  /**
   * Full light was measured again with the shutter held open.
   *
   * @param share of the full light that was set
   */
  record FullLightRead(double share) implements SessionEvent {}

  /** The shutter was held open at B in a quick look, under light that nobody had set. */
  record LightWasHeld(HeldLight seen) implements SessionEvent {}

  /** The person has adjusted something, or noted how it was found. */
  record AdjustmentMarked(AdjustedAt adjusted) implements SessionEvent {}

  /**
   * Two speeds are adjusted at once from here on.
   *
   * @param two empty for one at a time again
   */
  record TwoShown(Optional<TwoSpeeds> two) implements SessionEvent {}

  /** A step of adjusting curtains is open from here on. */
  record StepShown(CurtainStep step) implements SessionEvent {}

  /** Both of two speeds have their firings since the last adjustment. */
  record TwoFired(TwoSpeeds two) implements SessionEvent {}

  /** A quick look asks for a speed again, and says why. */
  record RepeatAsked(QuickRepeat repeat) implements SessionEvent {}

  /** The light was read with the shutter at rest. */
  record LightWasRead(LightReading reading) implements SessionEvent {}

  /** The thresholds do not stand where the light had set them: full-open light is unknown again. */
  record LightForgotten() implements SessionEvent {}

  /**
   * Firings are measured with another profile from here on, or count as calibrated no more, or
   * again.
   */
  record ProfileStands(ProfileUse use) implements SessionEvent {}

  /**
   * The pings of the session find another rate of the clock than the profile tells, beyond what
   * both leave to doubt. Nothing is corrected by it.
   *
   * @param kept that of the profile, which times are worked out with
   * @param live that of the pings
   */
  record ClocksDisagree(ClockRate kept, ClockRate live) implements SessionEvent {}

  /**
   * A stage of assembly begins, or goes on.
   *
   * @param stage counts the stages of the assembly from 1
   * @param assembly how far the shutter is put together
   * @param how it came about
   * @param earlier the last stage that was the same; 0 where none was
   * @param lightAgain whether full light has to be set again, since the cells are others
   */
  record StageBegins(
      int stage, Assembly assembly, StageSwitch.How how, int earlier, boolean lightAgain)
      implements SessionEvent {}

  /** Every speed of the run has its firings. */
  record RunDone() implements SessionEvent {}

  /**
   * Firings fit another speed than the one shown. One answer does for all; those that follow and
   * fit as well join the question without being asked about again.
   */
  record QuestionAsked(Question question) implements SessionEvent {}

  /** The question that was open is settled: answered, or what it was about is gone. */
  record QuestionClosed(Question question) implements SessionEvent {}

  /**
   * The flash contact is in use for the first time of the session: what is to be known before a
   * hand goes near it.
   */
  record FlashContactInUse() implements SessionEvent {}

  /** The light came so late after the release that the self-timer was on, most likely. */
  record IsTheSelfTimerOn(FiringKey firing, double seconds) implements SessionEvent {}

  /**
   * Light with the shutter fully open is off what was set.
   *
   * @param share of the full light that was set
   * @param firings now marked as doubtful: those since the last good plateau
   */
  record PlateauOff(double share, List<FiringKey> firings) implements SessionEvent {
    public PlateauOff {
      firings = List.copyOf(firings);
    }
  }

  /**
   * A stroke of cocking was seen while learning.
   *
   * @param strokes so far
   * @param wanted in all
   */
  record CockingStroke(int strokes, int wanted) implements SessionEvent {}

  /** How this shutter lets light through when it is cocked is known. */
  record CockingKnown(CockingPattern pattern) implements SessionEvent {}

  /**
   * Learning ended without a pattern.
   *
   * @param strokes with light that were seen
   */
  record CockingNotKnown(int strokes) implements SessionEvent {}

  /** Light came while cocking, and the blades should have stayed shut. */
  record LeakWhileCocking(FiringKey firing) implements SessionEvent {}

  /**
   * Nothing was heard of the rig for a while, and what happened meanwhile is not known.
   *
   * @param seconds how long by the rig's own ticks; empty where it started anew or is another one
   */
  record LinkGap(OptionalDouble seconds) implements SessionEvent {}
}
