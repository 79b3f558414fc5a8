package org.halflight.session;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.RigProfile;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;

/** Something that a session is told. */
public sealed interface SessionInput {
  /** What the person did about speeds and firings: it can be undone. What the rig said never is. */
  sealed interface UserAction extends SessionInput {}

  /**
   * A rig is there, or there again, or started anew.
   *
   * @param serial its serial number
   * @param bootCount how often its board has started
   * @param firmware version of its firmware; empty where that is not known
   */
  record RigIs(String serial, long bootCount, BoardTraits board, String firmware)
      implements SessionInput {}

  /**
   * The one threshold of a small rig stands at a level.
   *
   * @param level empty while it is on its way between them
   */
  record LevelStands(Optional<AlternatingLevels.Level> level) implements SessionInput {}

  /** An edge came. */
  record EdgeAt(Edge edge) implements SessionInput {}

  /** The light of one opening came, as the rig's converter sampled it. */
  record CurveAt(SampledLight light) implements SessionInput {}

  /**
   * Rig time has passed, and these were the levels.
   *
   * @param levels bit n is the level of the channel with code n
   * @param lightSum16 light of the centre sensor, sum of 16 ten-bit readings over the last full
   *     millisecond; empty where the rig does not say
   */
  record BeatAt(long ticks, int levels, OptionalInt lightSum16) implements SessionInput {
    /** A beat without light. */
    public BeatAt(long ticks, int levels) {
      this(ticks, levels, OptionalInt.empty());
    }
  }

  /**
   * Something was lost.
   *
   * @param sinceTicks what came since then, up to the next beat, is not to be trusted; empty where
   *     only what comes between the input before and the one after may be missing
   */
  record Damaged(Firing.Damage damage, OptionalLong sinceTicks) implements SessionInput {
    /** Something is missing here. */
    public Damaged(Firing.Damage damage) {
      this(damage, OptionalLong.empty());
    }
  }

  /**
   * The rig told how many edges it sent, behind missing lines.
   *
   * @param allCame whether none was among the missing lines; else one was, or nobody knows
   */
  record EdgesCounted(boolean allCame) implements SessionInput {}

  /** The link is gone: what was under way will not be seen to its end. */
  record LinkLost() implements SessionInput {}

  /**
   * The light begins to be set, or that ends, whatever came of it: openings meanwhile are no
   * releases.
   */
  record LightBeingSet(boolean begins) implements SessionInput {}

  /** Both thresholds were read, wherever they stand: in counts of the converter. */
  record ThresholdsRead(double lowCounts, double highCounts) implements SessionInput {}

  /** The thresholds do not stand where they were set, so full-open light is unknown again. */
  record LightForgotten() implements SessionInput {}

  /**
   * The light was set.
   *
   * @param levels dark and full light, and the thresholds as they read
   * @param trips where the comparators really switch
   * @param outer light of the outer sensors, of those that were read
   */
  record LightSet(LightLevels levels, TripPoints trips, Map<Channel, SensorLight> outer)
      implements SessionInput {
    public LightSet {
      outer = Map.copyOf(outer);
    }

    /** Of the centre alone. */
    public LightSet(LightLevels levels, TripPoints trips) {
      this(levels, trips, Map.of());
    }

    /** Without having looked at the comparators. */
    public LightSet(LightLevels levels) {
      this(levels, TripPoints.EXACT);
    }
  }

  /**
   * The rig works for itself, at a calibration or a rig check, or is done with it: what it sees
   * meanwhile is no shutter's.
   */
  record RigAtWork(boolean begins) implements SessionInput {}

  /**
   * The profile that firings of its rig are measured with from here on, until another one of that
   * rig is told. That of another rig is kept until that rig is there.
   *
   * @param on the day on which it is put to use; its age is held against that
   * @param mostDays how old it may be, in days; empty for any age
   */
  record ProfileInUse(RigProfile profile, LocalDate on, OptionalInt mostDays)
      implements SessionInput {}

  /**
   * There is a profile that must not be used.
   *
   * @param why such as that its file was edited
   */
  record ProfileRefused(ProfileFit.Mismatch why) implements SessionInput {
    public ProfileRefused {
      if (!why.forbidsUse()) {
        throw new IllegalArgumentException("a profile is not refused for this: " + why);
      }
    }
  }

  /** From here on no profile is used. */
  record ProfileLeftOut() implements SessionInput {}

  /**
   * A rig was checked against its profile. A signal takes 'calibrated' off the firings of the run
   * under way and those that follow, until a check is in control again or there is a new profile.
   */
  record RigChecked(String rigSerial, boolean inControl) implements SessionInput {}

  /**
   * The clock of a rig was held against the clock of the host by the pings of this session. Counts
   * for firings from here on, where no profile tells the rate.
   */
  record ClockHeld(String rigSerial, ClockRate rate) implements SessionInput {}

  /** What was held against each other counts no more: the program begins again. */
  record ClocksForgotten() implements SessionInput {}

  /**
   * A run begins; the first speed of its order is shown. The set-up of a run that is under way goes
   * on with that run.
   */
  record RunBegins(RunSetup setup) implements UserAction {}

  /** The person chose a speed, of the run or not. */
  record SpeedChosen(MarkedSpeed speed) implements UserAction {}

  /** The person chose a setting without a marked time. */
  record UntimedTestChosen(UntimedTest test) implements UserAction {}

  /** On to the next setting of the run, done or not; stays at the last. */
  record NextChosen() implements UserAction {}

  /** Back to the setting before; stays at the first. */
  record PreviousChosen() implements UserAction {}

  /** The person does not count this firing. */
  record FiringRejected(FiringKey firing, String reason) implements UserAction {}

  /**
   * The person does not count the last firing that counts, of whatever run: the rejection that
   * session files of earlier versions hold.
   */
  record LastRejected(String reason) implements UserAction {}

  /** The reason why a rejected firing is not counted is another one. */
  record ReasonChanged(FiringKey firing, String reason) implements UserAction {}

  /** The shutter hung open and the person closed it, or has just closed it. */
  record ClosedByHand() implements UserAction {}

  /** The person lets the firings of the open question stay at the speed that was shown. */
  record AcceptedAsShown() implements UserAction {}

  /**
   * The person says that firings were fired at another speed than was shown. Names the firings, so
   * that it means the same whether or not a question is asked.
   */
  record FiringsMoved(List<FiringKey> firings, MarkedSpeed to) implements UserAction {
    public FiringsMoved {
      firings = List.copyOf(firings);
    }
  }

  /**
   * A firing was made under these special conditions, and under no others: what was said before
   * does not count. Names the firing, so that it means the same after an undo.
   */
  record FiringUnder(FiringKey firing, FiringConditions conditions) implements UserAction {}

  /**
   * From the next firing on these special conditions hold, until others are said or another run
   * begins.
   *
   * @param lasting of kinds that last from firing to firing
   */
  record ConditionsAre(FiringConditions lasting) implements UserAction {
    public ConditionsAre {
      if (lasting.said().stream().anyMatch(each -> !each.kind().isLasting())) {
        throw new IllegalArgumentException("of one firing alone: " + lasting);
      }
    }
  }

  /** The person cocks the shutter a few times, so that the light it lets through can be learnt. */
  record CockingLearnt(boolean begins) implements UserAction {}

  /**
   * The person tried the film advance after a press of the linkage test. What the rig saw since the
   * key before belongs to the press; where it saw no light, the shutter did not trip.
   */
  record PressJudged(LinkageStep step, WindState wind) implements UserAction {}

  /** The person read a screw plunger at both points of the stroke. */
  record PlungerRead(PlungerReading reading) implements UserAction {}

  /**
   * The person has adjusted something: firings from here on are of another shutter. Words that
   * {@link AdjusterTurn#find} reads are counted too; an adjuster as found changes no firing.
   */
  record Adjusted(String words) implements UserAction {
    public Adjusted {
      words = AdjusterTurn.find(words).map(AdjusterTurn::text).orElse(words);
    }
  }

  /**
   * Two speeds are adjusted at once from here on.
   *
   * @param two empty for one at a time again
   */
  record TwoChosen(Optional<TwoSpeeds> two) implements UserAction {}

  /** A step of adjusting curtains is opened; its speed is shown. */
  record StepChosen(CurtainStep step) implements UserAction {}

  /** The lens cap was put on or taken off. */
  record LensCap(boolean on) implements UserAction {}

  /**
   * The light was read with the shutter at rest.
   *
   * @param reading run, rig and full light are those of the session, whatever it says of them
   */
  record LightRead(LightReading reading) implements SessionInput {}

  /**
   * A test of the light came to its end: each of its readings was taken or skipped.
   *
   * @param test the leak test or the stop check
   */
  record LightTestEnds(UntimedTest test) implements SessionInput {
    public LightTestEnds {
      if (!test.isOfTheLight()) {
        throw new IllegalArgumentException("not a test of the light: " + test);
      }
    }
  }

  /** Nothing more will come. */
  record Ends() implements SessionInput {}
}
