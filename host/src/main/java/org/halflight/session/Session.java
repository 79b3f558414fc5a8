package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.SensorLight;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ProfileFit;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.halflight.speeds.MarkedSpeed;

/**
 * A session at the bench as a state machine: what happens to each release, which speed is next,
 * what is asked. It reads no clock and no file; the same inputs always bring the same results. No
 * input is refused, and no firing is ever dropped. Not safe for use by several threads.
 */
public final class Session {
  /** Quiet time that ends a firing, in seconds: longer than any bounce, shorter than a hand. */
  public static final double QUIET_SECONDS = 0.2;

  /** After so many tries that did not bring it to its end, a check is given up. */
  public static final int ENOUGH_TRIES = 10;

  /** Firings from which the shutter's own sound is learnt. */
  public static final int ALONE_FIRINGS = 3;

  /** Open for longer than this, and than three times the marking, is worth saying, in seconds. */
  public static final double OPEN_LONG_SECONDS = 2;

  /** So many tries end a speed that is fired until its verdict is in, if not more are planned. */
  public static final int MOST_UNTIL_DECIDED = 20;

  private final FiringLog log = new FiringLog();
  private final DialQuestions questions = new DialQuestions(log);
  private final PressBook presses = new PressBook(log);
  private final KnobWatch knob = new KnobWatch();
  private final RunProgress progress;
  private final RigOnBench rig = new RigOnBench();
  private final LightState light = new LightState(log);
  private final FiringMeter meter;
  private final Corrections corrections;
  private final UnderwayWatch underway;
  private final FiringSettler settler;

  private final List<LightReading> readings = new ArrayList<>();
  private FiringGrouper grouper = grouperFor(BoardTraits.USUAL);
  private boolean rigAtWork;
  private OptionalLong lastEdgeTicks = OptionalLong.empty();

  /** Firings before this one have ticks of another start. */
  private int firstOfTicks;

  /** A session that never looks at verdicts: a speed has its firings when they are as many. */
  public Session() {
    this((setup, firings) -> true);
  }

  /**
   * @param verdictIsIn is asked where a run is fired until it is decided
   */
  public Session(VerdictIsIn verdictIsIn) {
    progress = new RunProgress(log, presses, questions, verdictIsIn);
    meter = new FiringMeter(log, progress, rig, light, RunSetup::exposureMethod);
    corrections = new Corrections(log, progress, questions, meter.oneLevel());
    underway = new UnderwayWatch(progress, meter);
    settler = new FiringSettler(log, questions, progress, rig, light, meter, underway);
  }

  /**
   * Handles an input.
   *
   * @return what there is to report because of it, in order
   */
  public List<SessionEvent> handle(SessionInput input) {
    List<SessionEvent> events = new ArrayList<>();
    if (rigAtWork && isOfTheRig(input)) {
      if (input instanceof SessionInput.BeatAt beat) {
        rig.onTicks(beat.ticks(), events);
      }
    } else if (!onRig(input, events) && !onLight(input, events) && !onCalibration(input, events)) {
      onPerson(input, events);
    }
    if (presses.isWaiting() && isQuiet()) {
      presses.onQuiet(run(), phase(), rig.latestTicks(), events);
    }
    knob.look(events);
    return events;
  }

  /** What would be a shutter's, were the rig not at work for itself. */
  private static boolean isOfTheRig(SessionInput input) {
    return input instanceof SessionInput.EdgeAt
        || input instanceof SessionInput.BeatAt
        || input instanceof SessionInput.CurveAt
        || input instanceof SessionInput.EdgesCounted
        || input instanceof SessionInput.ThresholdsRead
        || (input instanceof SessionInput.Damaged damaged
            && damaged.damage() != Firing.Damage.RIG_RESTARTED);
  }

  /** What the rig and the link bring; whether it was that. */
  private boolean onRig(SessionInput input, List<SessionEvent> events) {
    if (input instanceof SessionInput.EdgeAt edge) {
      rig.onTicks(edge.edge().ticks(), events);
      lastEdgeTicks = OptionalLong.of(edge.edge().ticks());
      knob.onEdge(edge.edge());
      // The speed may change when a firing settles, so earlier firings settle before this edge is
      // looked at.
      settle(grouper.add(edge.edge()), events);
      publishUnderway(edge.edge().ticks(), events);
    } else if (input instanceof SessionInput.BeatAt beat) {
      rig.onTicks(beat.ticks(), events);
      knob.onBeat(beat.levels());
      beat.lightSum16().ifPresent(sum -> settler.plateaus().beat(beat.ticks(), beat.levels(), sum));
      settle(grouper.beat(beat.ticks(), beat.levels()), events);
      publishUnderway(beat.ticks(), events);
    } else if (input instanceof SessionInput.CurveAt curve) {
      meter.onCurve(curve.light()).ifPresent(result -> settler.addCurve(result, events));
    } else if (input instanceof SessionInput.EdgesCounted counted) {
      grouper.edgesCounted(counted.allCame());
      presses.onWatched(counted.allCame());
    } else if (input instanceof SessionInput.Damaged damaged) {
      onDamage(damaged, events);
    } else if (input instanceof SessionInput.RigIs is) {
      onRigIdentified(is, events);
    } else if (input instanceof SessionInput.RigAtWork work) {
      rigAtWork = work.begins();
      light.forgetThresholds();
    } else if (input instanceof SessionInput.LevelStands level) {
      meter.oneLevel().onLevel(level.level());
    } else if (input instanceof SessionInput.LinkLost) {
      presses.onWatched(false);
      settle(grouper.finish(Firing.Damage.LINK_LOST), events);
      rigAtWork = false;
      light.onBeingSet(false, rig.latestTicks());
      settler.forgetPress();
      rig.onLinkLost();
    } else if (input instanceof SessionInput.Ends) {
      settle(grouper.finish(), events);
      light.onBeingSet(false, rig.latestTicks());
    } else {
      return false;
    }
    return true;
  }

  /** What is said about the light; whether it was that. */
  private boolean onLight(SessionInput input, List<SessionEvent> events) {
    if (input instanceof SessionInput.LightBeingSet being) {
      light.onBeingSet(being.begins(), rig.latestTicks());
    } else if (input instanceof SessionInput.ThresholdsRead read) {
      light.onThresholds(new HeldLight.ThresholdsAt(read.lowCounts(), read.highCounts()));
    } else if (input instanceof SessionInput.LightForgotten) {
      light.forget();
      events.add(new SessionEvent.LightForgotten());
    } else if (input instanceof SessionInput.LightSet set) {
      light.onSet(set, events);
      publishProfile(events);
    } else if (input instanceof SessionInput.LightRead read) {
      onReading(read.reading(), events);
    } else if (input instanceof SessionInput.LensCap cap) {
      settler.onCap(cap.on());
    } else if (input instanceof SessionInput.LightTestEnds ends) {
      progress.lightTestEnds(ends.test(), events);
    } else {
      return false;
    }
    return true;
  }

  /** What is said about the calibration of the rig; whether it was that. */
  private boolean onCalibration(SessionInput input, List<SessionEvent> events) {
    ProfileWatch profiles = meter.profiles();
    if (input instanceof SessionInput.ProfileInUse profile) {
      profiles.onProfile(profile);
    } else if (input instanceof SessionInput.ProfileRefused refused) {
      profiles.refuse(refused.why());
    } else if (input instanceof SessionInput.ProfileLeftOut) {
      profiles.leaveOut();
    } else if (input instanceof SessionInput.RigChecked checked) {
      profiles.checked(checked);
      if (!checked.inControl() && checked.rigSerial().equals(rig.serial())) {
        doubtRun(events);
      }
    } else if (input instanceof SessionInput.ClockHeld held) {
      profiles.clocks().onClockHeld(held);
    } else if (input instanceof SessionInput.ClocksForgotten) {
      profiles.clocks().forget();
    } else {
      return false;
    }
    publishProfile(events);
    return true;
  }

  /** What the person says about speeds and firings. */
  private void onPerson(SessionInput input, List<SessionEvent> events) {
    if (input instanceof SessionInput.RunBegins begins) {
      presses.onWatched(true);
      light.onBeingSet(false, rig.latestTicks());
      int before = run();
      if (progress.begin(begins.setup(), events)) {
        settler.cocking().forget();
      }
      events.stream()
          .filter(SessionEvent.StageBegins.class::isInstance)
          .forEach(stage -> light.onStage((SessionEvent.StageBegins) stage));
      if (run() > before) {
        // What holds for a whole run is said in its set-up.
        settler.onConditions(FiringConditions.NONE);
      }
      settler.contactCaution().runBegins(begins.setup(), events);
    } else if (input instanceof SessionInput.SpeedChosen chosen) {
      progress.choose(new DialSetting.Speed(chosen.speed()), events);
    } else if (input instanceof SessionInput.UntimedTestChosen chosen) {
      progress.choose(new DialSetting.Untimed(chosen.test()), events);
      presses.onWatched(true);
    } else if (input instanceof SessionInput.NextChosen) {
      progress.next(events);
    } else if (input instanceof SessionInput.PreviousChosen) {
      progress.previous(events);
    } else if (input instanceof SessionInput.FiringRejected rejected) {
      corrections.reject(rejected.firing(), rejected.reason(), events);
    } else if (input instanceof SessionInput.LastRejected rejected) {
      corrections.rejectLast(rejected.reason(), events);
    } else if (input instanceof SessionInput.ReasonChanged changed) {
      corrections.changeReason(changed.firing(), changed.reason(), events);
    } else if (input instanceof SessionInput.FiringsMoved moved) {
      corrections.move(moved, events);
    } else if (input instanceof SessionInput.FiringUnder under) {
      corrections.under(under.firing(), under.conditions(), events);
    } else if (input instanceof SessionInput.ConditionsAre are) {
      settler.onConditions(progress.apartFromRun(run(), are.lasting()));
      events.add(new SessionEvent.ConditionsHold(conditions()));
    } else if (input instanceof SessionInput.AcceptedAsShown) {
      corrections.keepAsShown(events);
    } else if (input instanceof SessionInput.Adjusted adjusted) {
      progress.adjusted(adjusted.words(), events);
    } else if (input instanceof SessionInput.TwoChosen chosen) {
      progress.two(chosen.two(), events);
    } else if (input instanceof SessionInput.StepChosen chosen) {
      progress.step(chosen.step(), events);
    } else if (input instanceof SessionInput.PressJudged key) {
      onPress(key, events);
    } else if (input instanceof SessionInput.PlungerRead read) {
      presses.onPlunger(read.reading(), run(), phase(), events);
    } else if (input instanceof SessionInput.CockingLearnt learnt && learnt.begins()) {
      settler.cocking().begin();
    } else if (input instanceof SessionInput.CockingLearnt) {
      settler.cocking().end(events);
    } else if (input instanceof SessionInput.ClosedByHand && grouper.isLight()) {
      underway.onClosedByHand(rig.latestTicks());
    } else if (input instanceof SessionInput.ClosedByHand) {
      corrections.closedByHand(events);
    }
  }

  private void onPress(SessionInput.PressJudged key, List<SessionEvent> events) {
    // Light from here on is that of another press.
    settler.forgetPress();
    presses.onKey(
        key,
        setting(),
        run(),
        phase(),
        isQuiet(),
        rig.latestTicks(),
        rig.rate().ticks(PressBook.TWICE_SECONDS),
        events);
    progress.goOn(events);
  }

  private Optional<Phase> phase() {
    return setup().map(RunSetup::phase);
  }

  /** All presses of the linkage test so far, in the order of their keys. */
  public List<LinkagePress> presses() {
    return presses.presses();
  }

  /** All adjustments so far, in order. */
  public List<AdjustedAt> adjusted() {
    return progress.adjustments();
  }

  /** How adjusters were found and what was turned since, in order. */
  public List<AdjusterTurn> turns() {
    return progress.turns();
  }

  /** The step of adjusting curtains that was opened last in the run; empty for none. */
  public Optional<CurtainStep> step() {
    return progress.step();
  }

  /** The two speeds that are adjusted at once. */
  public Optional<TwoSpeeds> two() {
    return progress.two();
  }

  /** All readings of a screw plunger so far, in order. */
  public List<PlungerAt> plungers() {
    return presses.plungers();
  }

  /** All firings so far, the rejected ones too, in the order in which they settled. */
  public List<FiringResult> results() {
    return log.all();
  }

  /** All readings of the light with the shutter at rest, in order. */
  public List<LightReading> readings() {
    return Collections.unmodifiableList(readings);
  }

  /** All runs so far, in order; a firing of run n belongs to the one at place n - 1. */
  public List<RunSetup> runs() {
    return progress.runs();
  }

  /** The run under way or done. */
  public Optional<RunSetup> setup() {
    return progress.setup();
  }

  /** Counts the runs of the session from 1; 0 before one was begun. */
  public int run() {
    return progress.run();
  }

  /** The marked speed shown now; empty also while a check is shown. */
  public Optional<MarkedSpeed> shown() {
    return setting().flatMap(DialSetting::speed);
  }

  /** The check shown now. */
  public Optional<UntimedTest> untimedTest() {
    return setting().flatMap(DialSetting::untimedTest);
  }

  /** What is shown now, a marked speed or a check. */
  public Optional<DialSetting> setting() {
    return progress.shown();
  }

  /** Whether every speed of the run has its firings. */
  public boolean isRunDone() {
    return progress.isRunDone();
  }

  /** Whether no firing is under way; a contact or a click sensor that never rests is none. */
  public boolean isQuiet() {
    return !grouper.isLight() && !grouper.isMoreThanNoise();
  }

  /** How far the rig's lines were read, in ticks of its counter; 0 before the first. */
  public long latestTicks() {
    return rig.latestTicks();
  }

  /** How long ago the last edge came, in seconds by the rig's time; infinite where none came. */
  public double secondsSinceEdge() {
    return lastEdgeTicks.isEmpty()
        ? Double.POSITIVE_INFINITY
        : rig.rate().seconds(rig.latestTicks() - lastEdgeTicks.getAsLong());
  }

  /** Whether a light sensor sees light, by edges and beats so far. */
  public boolean seesLight() {
    return grouper.isLight();
  }

  /** The light as it was set last. */
  public Optional<LightLevels> light() {
    return light.set();
  }

  /** Light of the outer sensors when the light was set last, of those that were read. */
  public Map<Channel, SensorLight> outerLight() {
    return light.outer();
  }

  /** Where the comparators switch, as it was found when the light was set. */
  public TripPoints trips() {
    return light.trips();
  }

  /** The profile that firings are measured with now, and why they may not count as calibrated. */
  public ProfileUse profileUse() {
    return meter.profileUse();
  }

  /** Whether the rig has a profile and no rig check was made in this session. */
  public boolean isRigCheckDue() {
    return meter.profiles().isCheckDue();
  }

  /** Whether firings wait for full light to be measured again. */
  public boolean isFullLightWanted() {
    return light.isFullLightWanted();
  }

  /** What a quick look asks to be fired again now; empty in other runs. */
  public Optional<QuickRepeat> repeat() {
    return progress.repeat();
  }

  /** How many firings of what is shown are wanted by now. */
  public int wanted() {
    return setting().map(progress::wantedNow).orElse(0);
  }

  /** Whether the rig is to be asked where its thresholds stand: a quick look goes without light. */
  public boolean isThresholdsWanted() {
    return progress.isQuick()
        && !progress.isRunDone()
        && light.set().isEmpty()
        && meter.thresholdsAt().isEmpty();
  }

  /** Whether a plateau was off, and none was good since. */
  public boolean isLightInDoubt() {
    return light.isInDoubt();
  }

  /** The last firing of the run that counts and may be rejected. */
  public Optional<FiringResult> toReject() {
    return corrections.toReject();
  }

  /** The last firing of the run that the shutter made, rejected or not. */
  public Optional<FiringResult> lastFiring() {
    return log.last(r -> r.run() == run() && r.outcome().isOfTheShutter());
  }

  /** The special conditions that the next firing is made under. */
  public FiringConditions conditions() {
    return settler.conditions();
  }

  /** What there is to tell whoever looks at the session only now: what is shown and asked. */
  public List<SessionEvent> standing() {
    List<SessionEvent> events = new ArrayList<>();
    progress.showAgain(events);
    question().map(SessionEvent.QuestionAsked::new).ifPresent(events::add);
    return events;
  }

  /** The question that the person has not answered yet. */
  public Optional<Question> question() {
    return questions.open();
  }

  /** How this shutter lets light through when it is cocked, where that was learnt. */
  public Optional<CockingPattern> cockingPattern() {
    return settler.cocking().pattern();
  }

  /** Whether strokes of cocking are being learnt now. */
  public boolean isLearningCocking() {
    return settler.cocking().isLearning();
  }

  /** Whether the lens cap is said to be on. */
  public boolean isCapOn() {
    return settler.isCapOn();
  }

  /** Firings of the run at what is shown that have what was asked for; in a stage presses of B. */
  public int goodHere() {
    return setting().map(progress::goodAt).orElse(0);
  }

  /** Firings of the run at a speed that have what was asked for. */
  public int goodAt(MarkedSpeed speed) {
    return progress.goodAt(new DialSetting.Speed(speed));
  }

  /** Whether the rig sees one level of light at a time. */
  public boolean isOneLevelRig() {
    return meter.oneLevel().isOneLevel();
  }

  /** Whether the rig has one level that cannot be set, and measures by light curves alone. */
  public boolean hasFixedLevel() {
    return meter.oneLevel().isFixed();
  }

  /**
   * Where the one threshold of a small rig stands; empty while it is on its way, which takes half a
   * second after each firing, and with a rig of two levels.
   */
  public Optional<AlternatingLevels.Level> levelStands() {
    return meter.oneLevel().stands();
  }

  /** Damage that fell into no firing: lines or edges lost while nothing happened. */
  public long damageBetweenFirings() {
    return grouper.damageBetweenFirings();
  }

  private void onRigIdentified(SessionInput.RigIs is, List<SessionEvent> events) {
    if (rig.isSameStart(is)) {
      return;
    }
    // Ticks of another start mean nothing beside these.
    settle(grouper.finish(Firing.Damage.RIG_RESTARTED), events);
    if (!rig.isSame(is)) {
      settler.onOtherRig();
      light.onOtherRig(rig.isFirst());
    }
    rig.onRigIdentified(is, events);
    knob.onRig(is);
    forgetTicks();
    meter.oneLevel().onRigIdentified(is.board());
    light.onRig(is.board().fixedLevel());
    if (is.board().oneLevel()) {
      events.add(new SessionEvent.OneLevelRig(is.board().fixedLevel()));
    }
    grouper = grouperFor(is.board());
    meter.profiles().onRigIdentified(is);
    publishProfile(events);
  }

  private void forgetTicks() {
    firstOfTicks = log.size();
    rig.forgetTicks();
    light.forgetTicks();
    meter.forgetTicks();
    underway.forgetTicks();
    settler.forgetTicks();
    presses.forgetTicks();
    lastEdgeTicks = OptionalLong.empty();
  }

  private void publishProfile(List<SessionEvent> events) {
    ProfileWatch profiles = meter.profiles();
    profiles.news(light.set()).ifPresent(now -> events.add(new SessionEvent.ProfileStands(now)));
    profiles.clocks().news(profileUse().profile()).ifPresent(events::add);
  }

  /** A rig that is not as it was may not have been for a while: the whole run is in doubt. */
  private void doubtRun(List<SessionEvent> events) {
    log.all().stream()
        .filter(r -> r.run() == run() && r.key().rigSerial().equals(rig.serial()))
        .filter(r -> r.profileUse().isCalibrated())
        .map(r -> r.measuredWith(r.profileUse().with(ProfileFit.Mismatch.CHECK_SIGNAL)))
        .toList()
        .forEach(changed -> log.change(changed, events));
  }

  private void onDamage(SessionInput.Damaged damaged, List<SessionEvent> events) {
    presses.onWatched(false);
    if (damaged.damage() == Firing.Damage.RIG_RESTARTED) {
      // Ticks of another start mean nothing beside these, whether its greeting came or not.
      settle(grouper.finish(Firing.Damage.RIG_RESTARTED), events);
      forgetTicks();
      return;
    }
    long fromTicks = damaged.sinceTicks().orElse(rig.latestTicks());
    if (damaged.sinceTicks().isPresent()) {
      grouper.damageSince(damaged.damage(), fromTicks);
      reachBack(damaged.damage(), fromTicks, events);
    } else {
      grouper.damage(damaged.damage());
    }
    // The light of a press may have been among what was lost.
    settler
        .pressWithoutLight(fromTicks)
        .ifPresent(press -> corrections.damage(press, damaged.damage(), events));
  }

  /** Marks firings that are settled and that damage which was found later may have touched. */
  private void reachBack(Firing.Damage damage, long sinceTicks, List<SessionEvent> events) {
    for (int i = log.size() - 1; i >= firstOfTicks; i--) {
      FiringResult result = log.all().get(i);
      if (result.firing().lastTicks() + grouper.quietTicks() < sinceTicks) {
        return;
      }
      corrections.damage(result, damage, events);
    }
  }

  private void publishUnderway(long nowTicks, List<SessionEvent> events) {
    OptionalLong began = grouper.underwaySinceTicks();
    boolean isAFiring = began.isPresent() && !light.isForSetting(began.getAsLong());
    if (isAFiring && (grouper.isLight() || !settler.cocking().isLearning())) {
      underway.publish(grouper, rig.rate(), nowTicks, events);
    }
  }

  private void settle(List<Firing> firings, List<SessionEvent> events) {
    for (Firing firing : firings) {
      underway.onSettled();
      settler.settle(firing, events);
    }
    for (FiringGrouper.LateDamage late : grouper.drainLateDamage()) {
      reachBack(late.damage(), late.sinceTicks(), events);
    }
    for (FiringGrouper.LateKnob late : grouper.drainLateKnob()) {
      settler.addKnob(late, events);
    }
  }

  private void onReading(LightReading read, List<SessionEvent> events) {
    progress.lightRead();
    LightReading reading =
        read.in(run(), setup().map(RunSetup::phase), light.set(), rig.serial(), rig.bootCount());
    if (reading.what() == LightReading.What.FULL) {
      light.onReading(reading, events);
      return;
    }
    readings.add(reading);
    PanelReadings.last(readings, rig.serial())
        .ifPresent(test -> meter.profiles().panelTested(rig.serial(), test.fallBound()));
    events.add(new SessionEvent.LightWasRead(reading));
  }

  private static FiringGrouper grouperFor(BoardTraits board) {
    return new FiringGrouper(Math.max(1, board.rate().ticks(QUIET_SECONDS)), board);
  }
}
