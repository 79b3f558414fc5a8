package org.halflight.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.exposure.AlternatingLevels;
import org.halflight.exposure.ExposureMethod;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.profile.ProfileFit;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

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

  /** Up to so many edges a provisional figure is looked for at each. */
  private static final int EDGES_LOOKED_AT_EACH = 64;

  private final VerdictIsIn verdictIsIn;
  private final FiringLog log = new FiringLog();
  private final DialQuestions questions = new DialQuestions(log);
  private final CockingWatch cocking = new CockingWatch();
  private final PlateauWatch plateaus = new PlateauWatch();
  private final CurveWatch curves = new CurveWatch();
  private final LightTrust trust = new LightTrust();
  private final FullLightWait fullLight = new FullLightWait();
  private final LinkWatch link = new LinkWatch();
  private final ProfileWatch profiles = new ProfileWatch();

  private BoardTraits board = BoardTraits.USUAL;
  private final ContactCaution contactCaution = new ContactCaution();
  private FiringGrouper grouper = grouperFor(board);
  private String rigSerial = "";
  private long bootCount;
  private long latestTicks;
  private boolean releaseIsWired;
  private boolean capOn;
  private Optional<LightLevels> light = Optional.empty();
  private TripPoints trips = TripPoints.EXACT;

  private Optional<RunSetup> setup = Optional.empty();
  private SpeedQueue queue = SpeedQueue.EMPTY;
  private int run;
  private int firstRunOfCamera;
  private String camera = "";
  private Optional<DialSetting> shown = Optional.empty();
  private boolean staysHere;
  private boolean runDoneTold;
  private final Set<UntimedTest> lightTestsDone = EnumSet.noneOf(UntimedTest.class);

  private final List<RunSetup> runs = new ArrayList<>();
  private final List<LightReading> readings = new ArrayList<>();
  private final LightHold lightSetting = new LightHold();
  private final OneLevelWatch oneLevel = new OneLevelWatch();
  private OptionalLong closedByHandTicks = OptionalLong.empty();
  private Optional<FiringKey> awaitsLight = Optional.empty();
  private boolean provisionalTold;

  /** Edges of the centre sensor that the last look at the firing under way went by. */
  private int lookedAtEdges;

  /** Firings before this one have ticks of another start. */
  private int firstOfTicks;

  private boolean rigAtWork;

  /** A session that never looks at verdicts: a speed has its firings when they are as many. */
  public Session() {
    this((setup, firings) -> true);
  }

  /**
   * @param verdictIsIn is asked where a run is fired until it is decided
   */
  public Session(VerdictIsIn verdictIsIn) {
    this.verdictIsIn = verdictIsIn;
  }

  /**
   * Takes an input.
   *
   * @return what there is to tell because of it, in order
   */
  public List<SessionEvent> handle(SessionInput input) {
    List<SessionEvent> news = new ArrayList<>();
    if (rigAtWork && isOfTheRig(input)) {
      if (input instanceof SessionInput.BeatAt beat) {
        onTicks(beat.ticks(), news);
      }
      return news;
    }
    if (input instanceof SessionInput.RigAtWork work) {
      rigAtWork = work.begins();
    } else if (input instanceof SessionInput.RigIs rig) {
      onRigIdentified(rig, news);
    } else if (input instanceof SessionInput.EdgeAt edge) {
      onTicks(edge.edge().ticks(), news);
      // The speed may change when a firing settles, so earlier firings settle before this edge is
      // looked at.
      settle(grouper.add(edge.edge()), news);
      publishUnderway(edge.edge().ticks(), news);
    } else if (input instanceof SessionInput.BeatAt beat) {
      onTicks(beat.ticks(), news);
      beat.lightSum16().ifPresent(sum -> plateaus.beat(beat.ticks(), beat.levels(), sum));
      settle(grouper.beat(beat.ticks(), beat.levels()), news);
      publishUnderway(beat.ticks(), news);
    } else if (input instanceof SessionInput.CurveAt curve) {
      add(curve.light(), news);
    } else if (input instanceof SessionInput.Damaged damaged) {
      if (damaged.damage() == Firing.Damage.RIG_RESTARTED) {
        // Ticks of another start mean nothing beside these, whether its greeting came through or
        // not.
        settle(grouper.finish(Firing.Damage.RIG_RESTARTED), news);
        forgetTicks();
      } else {
        damage(damaged, news);
      }
    } else if (input instanceof SessionInput.EdgesCounted counted) {
      grouper.edgesCounted(counted.allCame());
    } else if (input instanceof SessionInput.LinkLost) {
      settle(grouper.finish(Firing.Damage.LINK_LOST), news);
      rigAtWork = false;
      lightSetting.onLightBeingSet(false, latestTicks);
      awaitsLight = Optional.empty();
      link.onLost();
    } else if (input instanceof SessionInput.LevelStands level) {
      oneLevel.onLevel(level.level());
    } else if (input instanceof SessionInput.LightBeingSet being) {
      lightSetting.onLightBeingSet(being.begins(), latestTicks);
    } else if (input instanceof SessionInput.LightForgotten) {
      light = Optional.empty();
      news.add(new SessionEvent.LightForgotten());
    } else if (input instanceof SessionInput.LightSet set) {
      fullLight(set.levels().fullCounts() - set.levels().darkCounts(), Optional.empty(), news);
      // Another light than theirs is set from here on.
      fullLight.forget();
      light = Optional.of(set.levels());
      trips = set.trips();
      trust.lightSet(log.size());
      publishProfile(news);
    } else if (input instanceof SessionInput.LightRead read) {
      add(read.reading(), news);
    } else if (input instanceof SessionInput.CockingLearnt learnt) {
      learnCocking(learnt.begins(), news);
    } else if (input instanceof SessionInput.LensCap cap) {
      capOn = cap.on();
    } else if (input instanceof SessionInput.Ends) {
      settle(grouper.finish(), news);
      lightSetting.onLightBeingSet(false, latestTicks);
    } else if (!calibrate(input, news)) {
      decide(input, news);
    }
    return news;
  }

  private void damage(SessionInput.Damaged damaged, List<SessionEvent> news) {
    long fromTicks = damaged.sinceTicks().orElse(latestTicks);
    if (damaged.sinceTicks().isPresent()) {
      grouper.damageSince(damaged.damage(), fromTicks);
      reachBack(damaged.damage(), fromTicks, news);
    } else {
      grouper.damage(damaged.damage());
    }
    // The light of a press may have been among what was lost.
    Optional<FiringResult> press =
        awaitsLight
            .flatMap(log::find)
            .filter(r -> r.outcome() == Outcome.DID_NOT_OPEN && r.rejection().isEmpty())
            .filter(r -> ReleaseTiming.mayCome(r.firing(), fromTicks, r.rate()));
    press.ifPresent(r -> damaged(r, damaged.damage(), news));
  }

  /** Marks firings that are settled and that damage which was found later may have touched. */
  private void reachBack(Firing.Damage damage, long sinceTicks, List<SessionEvent> news) {
    for (int i = log.size() - 1; i >= firstOfTicks; i--) {
      FiringResult result = log.all().get(i);
      if (result.firing().lastTicks() + grouper.quietTicks() < sinceTicks) {
        return;
      }
      damaged(result, damage, news);
    }
  }

  private void damaged(FiringResult result, Firing.Damage damage, List<SessionEvent> news) {
    if (result.firing().damage().contains(damage)) {
      return;
    }
    FiringResult changed = result.damagedBy(damage);
    log.replace(changed);
    news.add(new SessionEvent.Changed(changed));
    withdraw(Set.of(changed.key()), news);
    measureAgain(changed.run(), changed.setting(), news);
    // Its speed may lack one now.
    runDoneTold = false;
  }

  /** What would be a shutter's, were the rig not at work for itself. */
  private static boolean isOfTheRig(SessionInput input) {
    return input instanceof SessionInput.EdgeAt
        || input instanceof SessionInput.BeatAt
        || input instanceof SessionInput.CurveAt
        || input instanceof SessionInput.EdgesCounted
        || (input instanceof SessionInput.Damaged damaged
            && damaged.damage() != Firing.Damage.RIG_RESTARTED);
  }

  /** What is said about the calibration of the rig; whether it was that. */
  private boolean calibrate(SessionInput input, List<SessionEvent> news) {
    if (input instanceof SessionInput.ProfileInUse profile) {
      profiles.onProfile(profile);
    } else if (input instanceof SessionInput.ProfileRefused refused) {
      profiles.refuse(refused.why());
    } else if (input instanceof SessionInput.ProfileLeftOut) {
      profiles.leaveOut();
    } else if (input instanceof SessionInput.RigChecked checked) {
      profiles.checked(checked);
      if (!checked.inControl() && checked.rigSerial().equals(rigSerial)) {
        doubtRun(news);
      }
    } else if (input instanceof SessionInput.ClockHeld held) {
      profiles.clocks().onClockHeld(held);
    } else if (input instanceof SessionInput.ClocksForgotten) {
      profiles.clocks().forget();
    } else {
      return false;
    }
    publishProfile(news);
    return true;
  }

  /** A rig that is not as it was may not have been for a while: the whole run is in doubt. */
  private void doubtRun(List<SessionEvent> news) {
    List<FiringResult> calibrated =
        log.all().stream()
            .filter(r -> r.run() == run && r.key().rigSerial().equals(rigSerial))
            .filter(r -> r.profileUse().isCalibrated())
            .toList();
    for (FiringResult each : calibrated) {
      FiringResult changed =
          each.measuredWith(each.profileUse().with(ProfileFit.Mismatch.CHECK_SIGNAL));
      log.replace(changed);
      news.add(new SessionEvent.Changed(changed));
    }
  }

  private void publishProfile(List<SessionEvent> news) {
    profiles.news(light).ifPresent(now -> news.add(new SessionEvent.ProfileStands(now)));
    profiles.clocks().news(profileUse().profile()).ifPresent(news::add);
  }

  /** What the person says about speeds and firings. */
  private void decide(SessionInput input, List<SessionEvent> news) {
    if (input instanceof SessionInput.RunBegins begins) {
      lightSetting.onLightBeingSet(false, latestTicks);
      begin(begins.setup(), news);
      contactCaution.runBegins(begins.setup(), news);
    } else if (input instanceof SessionInput.SpeedChosen chosen) {
      choose(new DialSetting.Speed(chosen.speed()), news);
    } else if (input instanceof SessionInput.UntimedTestChosen chosen) {
      choose(new DialSetting.Untimed(chosen.test()), news);
    } else if (input instanceof SessionInput.NextChosen) {
      queue.after(shown).or(() -> shown).ifPresent(next -> choose(next, news));
    } else if (input instanceof SessionInput.PreviousChosen) {
      queue.before(shown).or(() -> shown).ifPresent(before -> choose(before, news));
    } else if (input instanceof SessionInput.FiringRejected rejected) {
      log.find(rejected.firing()).ifPresent(firing -> reject(firing, rejected.reason(), news));
    } else if (input instanceof SessionInput.LastRejected rejected) {
      log.last(Session::isRejectable).ifPresent(last -> reject(last, rejected.reason(), news));
    } else if (input instanceof SessionInput.FiringsMoved moved) {
      move(moved, news);
    } else if (input instanceof SessionInput.AcceptedAsShown) {
      Optional<Question> kept = questions.keep();
      kept.ifPresent(question -> news.add(new SessionEvent.QuestionClosed(question)));
      if (kept.isPresent()) {
        goOn(news);
      }
    } else if (input instanceof SessionInput.ClosedByHand) {
      closeByHand(news);
    } else if (input instanceof SessionInput.LightTestEnds test) {
      lightTestsDone.add(test.test());
      goOn(news);
    }
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
    return Collections.unmodifiableList(runs);
  }

  /** The run under way or done. */
  public Optional<RunSetup> setup() {
    return setup;
  }

  /** Counts the runs of the session from 1; 0 before one was begun. */
  public int run() {
    return run;
  }

  /** The marked speed shown now; empty also while a check is shown. */
  public Optional<MarkedSpeed> shown() {
    return shown.flatMap(DialSetting::speed);
  }

  /** The check shown now. */
  public Optional<UntimedTest> untimedTest() {
    return shown.flatMap(DialSetting::untimedTest);
  }

  /** What is shown now, a marked speed or a check. */
  public Optional<DialSetting> setting() {
    return shown;
  }

  /** Whether every speed of the run has its firings. */
  public boolean isRunDone() {
    return setup.isPresent() && queue.settings().stream().allMatch(this::isDone);
  }

  /** Whether no firing is under way; a contact or a click sensor that never rests is none. */
  public boolean isQuiet() {
    return !grouper.isLight() && !grouper.isMoreThanNoise();
  }

  /** Whether a light sensor sees light, by edges and beats so far. */
  public boolean seesLight() {
    return grouper.isLight();
  }

  /** The light as it was set last. */
  public Optional<LightLevels> light() {
    return light;
  }

  /** Where the comparators switch, as it was found when the light was set. */
  public TripPoints trips() {
    return trips;
  }

  /** The profile that firings are measured with now, and why they may not count as calibrated. */
  public ProfileUse profileUse() {
    return profiles.use(light);
  }

  /** Whether the rig has a profile and no rig check was made in this session. */
  public boolean isRigCheckDue() {
    return profiles.isCheckDue();
  }

  /** Whether firings wait for full light to be measured again. */
  public boolean isFullLightWanted() {
    return fullLight.isAny();
  }

  /** Whether a plateau was off, and none was good since. */
  public boolean isLightInDoubt() {
    return trust.isInDoubt();
  }

  /** The last firing of the run that counts and may be rejected. */
  public Optional<FiringResult> toReject() {
    return log.last(r -> r.run() == run && isRejectable(r));
  }

  /** What there is to tell whoever looks at the session only now: what is shown and asked. */
  public List<SessionEvent> standing() {
    List<SessionEvent> news = new ArrayList<>();
    shown.ifPresent(setting -> show(setting, news));
    question().ifPresent(question -> news.add(question.asNews()));
    return news;
  }

  /** The question that the person has not answered yet. */
  public Optional<Question> question() {
    return questions.open();
  }

  /** How this shutter lets light through when it is cocked, where that was learnt. */
  public Optional<CockingPattern> cockingPattern() {
    return cocking.pattern();
  }

  /** Whether strokes of cocking are being learnt now. */
  public boolean isLearningCocking() {
    return cocking.isLearning();
  }

  /** Whether the lens cap is said to be on. */
  public boolean isCapOn() {
    return capOn;
  }

  /** Firings of the run at a speed that have what was asked for. */
  public int goodAt(MarkedSpeed speed) {
    return log.good(run, new DialSetting.Speed(speed));
  }

  /** Whether the rig sees one level of light at a time. */
  public boolean isOneLevelRig() {
    return oneLevel.isOneLevel();
  }

  /**
   * Where the one threshold of a small rig stands; empty while it is on its way, which takes half a
   * second after each firing, and with a rig of two levels.
   */
  public Optional<AlternatingLevels.Level> levelStands() {
    return oneLevel.stands();
  }

  /** Damage that fell into no firing: lines or edges lost while nothing happened. */
  public long damageBetweenFirings() {
    return grouper.damageBetweenFirings();
  }

  private void onRigIdentified(SessionInput.RigIs rig, List<SessionEvent> news) {
    boolean sameStart = rig.serial().equals(rigSerial) && rig.bootCount() == bootCount;
    if (sameStart) {
      return;
    }
    // Ticks of another start mean nothing beside these.
    settle(grouper.finish(Firing.Damage.RIG_RESTARTED), news);
    link.onRigRestarted(!rigSerial.isEmpty(), news);
    forgetTicks();
    if (!rig.serial().equals(rigSerial)) {
      releaseIsWired = false;
      // The light was set on another rig's sensors and thresholds.
      light = rigSerial.isEmpty() ? light : Optional.empty();
      fullLight.forget();
    }
    board = rig.board();
    oneLevel.onRigIdentified(board.oneLevel());
    if (board.oneLevel()) {
      news.add(new SessionEvent.OneLevelRig());
    }
    grouper = grouperFor(board);
    rigSerial = rig.serial();
    bootCount = rig.bootCount();
    profiles.onRigIdentified(rig);
    publishProfile(news);
  }

  private void forgetTicks() {
    latestTicks = 0;
    firstOfTicks = log.size();
    lightSetting.forget();
    link.forget();
    plateaus.forget();
    curves.forget();
    awaitsLight = Optional.empty();
    closedByHandTicks = OptionalLong.empty();
  }

  private void onTicks(long ticks, List<SessionEvent> news) {
    link.onTicks(ticks, board.rate(), news);
    latestTicks = Math.max(latestTicks, ticks);
  }

  private void settle(List<Firing> firings, List<SessionEvent> news) {
    for (Firing firing : firings) {
      settle(firing, news);
    }
    for (FiringGrouper.LateDamage late : grouper.takeLateDamage()) {
      reachBack(late.damage(), late.sinceTicks(), news);
    }
  }

  private void settle(Firing firing, List<SessionEvent> news) {
    provisionalTold = false;
    lookedAtEdges = 0;
    FiringKey key = new FiringKey(rigSerial, bootCount, firing.firstTicks());
    OptionalDouble plateau = plateaus.countsOf(firing, board.rate());
    Optional<FiringResult> known = log.find(key);
    if (known.isPresent()) {
      goesOn(known.get(), firing, plateau, news);
      return;
    }
    if (lightSetting.holds(firing)) {
      add(heldForLight(key, firing), news);
      return;
    }
    boolean pressed = ReleaseTiming.isPressed(firing);
    releaseIsWired |= pressed;
    // Light came in: a cap that was said to be on is off, whatever was forgotten.
    capOn &= !ReleaseTiming.hasLight(firing);
    List<SessionEvent> afterwards = new ArrayList<>();
    LeafExposure exposure = measure(firing);
    if (cocking.takes(
        firing, exposure, board.rate(), pressed, releaseIsWired, wantedSeconds(), afterwards)) {
      boolean leak = setup.filter(s -> s.customs().bladesShutWhileCocking()).isPresent();
      if (leak) {
        afterwards.add(new SessionEvent.LeakWhileCocking(key));
      }
      FiringNotes notes = notes(OptionalDouble.empty(), OptionalDouble.empty(), leak);
      add(
          result(key, firing, exposure, Outcome.LIGHT_WHILE_COCKING, notes, Optional.empty()),
          news);
      news.addAll(afterwards);
      return;
    }
    Optional<FiringResult> press = pressFor(firing);
    if (pressed || ReleaseTiming.hasLight(firing)) {
      awaitsLight = Optional.empty();
    }
    if (press.isPresent()) {
      log.joined(key, press.get().key());
      release(
          press.get().key(),
          ReleaseTiming.join(press.get().firing(), firing),
          plateau,
          press,
          news);
    } else {
      release(key, firing, plateau, press, news);
    }
  }

  /**
   * Edges that begin at the same tick as a firing that is there: what is told twice changes
   * nothing, and what is new is the rest of it, behind a break.
   */
  private void goesOn(
      FiringResult known, Firing rest, OptionalDouble plateau, List<SessionEvent> news) {
    if (!known.firing().edges().containsAll(rest.edges())) {
      Firing whole = ReleaseTiming.joinBroken(known.firing(), rest);
      release(known.key(), whole, plateau, Optional.of(known), news);
    }
  }

  /**
   * Settles a release.
   *
   * @param press the result that it takes the place of: it was pressed, and the light came later,
   *     or a break lay in between
   */
  private void release(
      FiringKey key,
      Firing firing,
      OptionalDouble plateau,
      Optional<FiringResult> press,
      List<SessionEvent> news) {
    LeafExposure exposure = closedByHand(firing, measure(firing));
    Optional<UntimedTest> check = press.map(FiringResult::untimedTest).orElseGet(this::untimedTest);
    Outcome outcome = OutcomeRule.of(firing, exposure, board.rate(), check, capOn);
    FiringNotes notes =
        notes(
            ReleaseTiming.delaySeconds(
                profileUse().crossings(firing, board.rate()), profileUse().rate(board.rate())),
            plateau,
            false);
    FiringResult result = result(key, firing, exposure, outcome, notes, press);
    add(result, news);
    if (outcome == Outcome.DID_NOT_OPEN) {
      awaitsLight = Optional.of(key);
    }
    if (result.isBySelfTimer() && !check.equals(Optional.of(UntimedTest.SELF_TIMER))) {
      news.add(new SessionEvent.IsTheSelfTimerOn(key, result.releaseDelaySeconds().getAsDouble()));
    }
    notes.plateauShare().ifPresent(share -> watchLight(share, Optional.of(result.key()), news));
    questions
        .settled(result, result.shown().map(this::neighbours).orElse(List.of()))
        .ifPresent(question -> news.add(question.asNews()));
    measureAgain(result.run(), result.setting(), news);
    goOn(news);
  }

  /** With a small rig each firing tells more about the others of its speed, never about itself. */
  private void measureAgain(int ofRun, Optional<DialSetting> at, List<SessionEvent> news) {
    if (!oneLevel.isOneLevel()) {
      return;
    }
    for (FiringResult each : sameSpeed(ofRun, at).toList()) {
      OptionalDouble gap =
          OneLevelWatch.gapOf(sameSpeed(ofRun, at).filter(r -> !r.key().equals(each.key())));
      boolean waits = OneLevelWatch.awaitsOtherLevel(each.exposure());
      if (each.oneLevel().isEmpty()
          || !(waits || each.outcome() == Outcome.TIMED)
          || each.oneLevel().get().gapSeconds().equals(gap)) {
        continue;
      }
      OneLevel seen = new OneLevel(each.oneLevel().get().level(), gap);
      LeafExposure again =
          seen.measure(
              each.crossings(),
              each.levels().orElse(LevelPair.GAUSS),
              each.realRate(),
              each.firing().lastTicks());
      FiringResult changed =
          each.measuredAgain(
              seen,
              OutcomeRule.of(
                  each.firing(), again, each.rate(), each.untimedTest(), each.notes().capOn()),
              again);
      log.replace(changed);
      news.add(new SessionEvent.Changed(changed));
    }
  }

  private Stream<FiringResult> sameSpeed(int ofRun, Optional<DialSetting> at) {
    return log.at(ofRun, at);
  }

  /** The light curve of an opening, early or late. */
  private void add(SampledLight curve, List<SessionEvent> news) {
    curves
        .onCurve(curve, log, rigSerial, bootCount)
        .map(result -> result.withCurve(FiringCurve.of(curve, light, result.realRate())))
        .ifPresent(
            result -> {
              log.replace(result);
              fullLight.onFiring(result);
              news.add(new SessionEvent.CurveAdded(result));
            });
  }

  private void add(FiringResult done, List<SessionEvent> news) {
    FiringResult settled = done.measuredWith(profileUse());
    FiringResult result =
        curves
            .of(settled.firing())
            .map(curve -> settled.withCurve(FiringCurve.of(curve, light, settled.realRate())))
            .orElse(settled);
    if (log.knows(result.key())) {
      log.replace(result);
    } else {
      log.add(result);
    }
    fullLight.onFiring(result);
    news.add(new SessionEvent.Settled(result));
    contactCaution.settled(result, news);
  }

  private void add(LightReading read, List<SessionEvent> news) {
    LightReading reading = read.in(run, setup.map(RunSetup::phase), light, rigSerial, bootCount);
    if (reading.what() != LightReading.What.FULL) {
      readings.add(reading);
      PanelReadings.last(readings, rigSerial)
          .ifPresent(test -> profiles.panelTested(rigSerial, test.fallBound()));
      news.add(new SessionEvent.LightWasRead(reading));
    } else if (light.isPresent()) {
      double share = PlateauWatch.share(reading.counts(), light.get());
      news.add(new SessionEvent.FullLightRead(share));
      watchLight(share, Optional.empty(), news);
    }
  }

  /** Full light was measured again: what the curves of earlier firings waited for. */
  private void fullLight(double lightCounts, Optional<FiringKey> own, List<SessionEvent> news) {
    for (FiringResult now : fullLight.measured(lightCounts, own, log)) {
      log.replace(now);
      news.add(new SessionEvent.Changed(now));
    }
  }

  private FiringResult heldForLight(FiringKey key, Firing firing) {
    return new FiringResult(
        log.size() + 1,
        key,
        firing,
        board.rate(),
        run,
        Optional.empty(),
        setup.map(RunSetup::reference).orElse(Reference.EXACT),
        setup.map(RunSetup::phase),
        Outcome.HELD_FOR_LIGHT,
        measure(firing),
        levels(),
        false,
        FiringNotes.NONE);
  }

  private FiringResult result(
      FiringKey key,
      Firing firing,
      LeafExposure exposure,
      Outcome outcome,
      FiringNotes notes,
      Optional<FiringResult> press) {
    if (press.isPresent()) {
      FiringResult earlier = press.get();
      FiringResult whole =
          new FiringResult(
              earlier.number(),
              key,
              firing,
              board.rate(),
              earlier.run(),
              earlier.setting(),
              earlier.reference(),
              earlier.phase(),
              outcome,
              exposure,
              levels(),
              seenNow(),
              earlier.afterRest(),
              notes.moved(earlier.notes().movedFrom()),
              Optional.empty(),
              ProfileUse.NONE);
      return earlier.rejection().map(whole::rejected).orElse(whole);
    }
    Optional<Phase> phase = setup.map(RunSetup::phase);
    boolean first = phase.equals(Optional.of(Phase.AS_FOUND)) && !log.hasOfTheShutter(run);
    return new FiringResult(
        log.size() + 1,
        key,
        firing,
        board.rate(),
        run,
        shown,
        setup.map(RunSetup::reference).orElse(Reference.EXACT),
        phase,
        outcome,
        exposure,
        levels(),
        seenNow(),
        first && isOfTheShutter(outcome, exposure),
        notes,
        Optional.empty(),
        ProfileUse.NONE);
  }

  private static boolean isOfTheShutter(Outcome outcome, LeafExposure exposure) {
    return outcome.isOfTheShutter() || OneLevelWatch.awaitsOtherLevel(exposure);
  }

  private FiringNotes notes(OptionalDouble delay, OptionalDouble plateau, boolean leak) {
    OptionalDouble share =
        plateau.isPresent() && light.isPresent() && levels().isPresent()
            ? OptionalDouble.of(PlateauWatch.share(plateau.getAsDouble(), light.get()))
            : OptionalDouble.empty();
    return new FiringNotes(
        delay,
        plateau,
        share,
        trust.doubts(share),
        leak,
        capOn,
        Optional.empty(),
        Optional.empty());
  }

  private Optional<FiringResult> pressFor(Firing firing) {
    return awaitsLight
        .flatMap(log::find)
        .filter(r -> r.rejection().isEmpty())
        .filter(r -> ReleaseTiming.belongs(firing, r.firing(), board.rate()));
  }

  private LeafExposure measure(Firing firing) {
    LevelPair assumed = levels().orElse(LevelPair.GAUSS);
    long nowTicks = Math.max(latestTicks, firing.lastTicks());
    Firing crossings = profileUse().crossings(firing, board.rate());
    TickRate realRate = profileUse().rate(board.rate());
    return oneLevel.isOneLevel()
        ? seenNow().orElse(OneLevelWatch.ON_ITS_WAY).measure(crossings, assumed, realRate, nowTicks)
        : setup
            .map(its -> its.shutter().exposureMethod())
            .orElse(ExposureMethod.LEAF)
            .measure(crossings, assumed, realRate, nowTicks);
  }

  private Optional<OneLevel> seenNow() {
    return oneLevel.seen(sameSpeed(run, shown));
  }

  /**
   * The levels at which the comparators switch, in the mean of rising and falling light: that one
   * switches later on the way up by half its hysteresis and as much later on the way down, which
   * moves an opening and leaves its width.
   */
  private Optional<LevelPair> levels() {
    return light.flatMap(
        set ->
            set.levels() instanceof LightLevels.Known
                ? profileUse().trips(trips).middle(set)
                : Optional.empty());
  }

  /**
   * Full light was seen.
   *
   * @param share of the full light that was set
   * @param own the firing whose plateau it is; empty where it was read by itself
   */
  private void watchLight(double share, Optional<FiringKey> own, List<SessionEvent> news) {
    boolean known = trust.isInDoubt();
    List<FiringResult> newlyDoubted = trust.onPlateau(share, log);
    newlyDoubted.forEach(r -> log.replace(r.doubtful()));
    if (trust.isInDoubt() && !known) {
      List<FiringKey> keys = new ArrayList<>(newlyDoubted.stream().map(r -> r.key()).toList());
      own.ifPresent(keys::add);
      news.add(new SessionEvent.PlateauOff(share, keys));
    }
    newlyDoubted.forEach(r -> news.add(new SessionEvent.Changed(r.doubtful())));
    LightLevels set = light.orElseThrow();
    fullLight(share * (set.fullCounts() - set.darkCounts()), own, news);
  }

  private void closeByHand(List<SessionEvent> news) {
    if (grouper.isLight()) {
      closedByHandTicks = OptionalLong.of(latestTicks);
      return;
    }
    // Both hands were on the camera: the key comes after the closing.
    Optional<FiringResult> last = log.last(r -> r.outcome().isOfTheShutter());
    if (last.isEmpty() || !(last.get().exposure() instanceof LeafExposure.Timed timed)) {
      return;
    }
    if (timed.widthLowSeconds() > openLongSeconds(last.get().shown())) {
      FiringResult changed = last.get().stuckOpen(stuck(timed));
      log.replace(changed);
      news.add(new SessionEvent.Changed(changed));
      withdraw(Set.of(changed.key()), news);
      showAgain(changed, news);
    }
  }

  private LeafExposure closedByHand(Firing firing, LeafExposure exposure) {
    boolean byHand =
        closedByHandTicks.isPresent()
            && closedByHandTicks.getAsLong() >= firing.firstTicks()
            && closedByHandTicks.getAsLong() <= firing.lastTicks();
    if (!byHand) {
      return exposure;
    }
    closedByHandTicks = OptionalLong.empty();
    return exposure instanceof LeafExposure.Timed timed ? stuck(timed) : exposure;
  }

  private static LeafExposure.StuckOpen stuck(LeafExposure.Timed timed) {
    return new LeafExposure.StuckOpen(timed.widthLowSeconds(), timed.crossings().lowRiseTicks());
  }

  private void learnCocking(boolean begins, List<SessionEvent> news) {
    if (begins) {
      cocking.begin();
    } else {
      cocking.end(news);
    }
  }

  private void begin(RunSetup begun, List<SessionEvent> news) {
    boolean goesOn = setup.filter(begun::asksTheSameAs).isPresent() && !isRunDone();
    if (!goesOn) {
      run++;
      lightTestsDone.clear();
      boolean otherCamera =
          !camera.isBlank() && !begun.camera().isBlank() && !camera.equals(begun.camera());
      if (otherCamera) {
        cocking.forget();
        firstRunOfCamera = run;
      }
      camera = begun.camera().isBlank() ? camera : begun.camera();
      questions
          .runBegins(firstRunOfCamera)
          .ifPresent(question -> news.add(new SessionEvent.QuestionClosed(question)));
    }
    setup = Optional.of(begun);
    if (goesOn) {
      runs.set(run - 1, begun);
    } else {
      runs.add(begun);
    }
    queue = new SpeedQueue(begun.settings());
    staysHere = false;
    runDoneTold = false;
    Optional<DialSetting> still = shown.filter(here -> goesOn && !isDone(here));
    still
        .or(() -> queue.nextOpen(Optional.empty(), this::isDone))
        .ifPresent(setting -> show(setting, news));
  }

  private static boolean isRejectable(FiringResult result) {
    return result.outcome().isOfTheShutter() && result.rejection().isEmpty();
  }

  private void reject(FiringResult counted, String reason, List<SessionEvent> news) {
    if (!isRejectable(counted)) {
      return;
    }
    FiringResult rejected = counted.rejected(reason);
    log.replace(rejected);
    news.add(new SessionEvent.Rejected(rejected));
    measureAgain(rejected.run(), rejected.setting(), news);
    withdraw(Set.of(rejected.key()), news);
    showAgain(rejected, news);
  }

  /** The speed of a firing that counts no more is shown again: it lacks one now. */
  private void showAgain(FiringResult lost, List<SessionEvent> news) {
    runDoneTold = false;
    staysHere = false;
    lost.setting().ifPresent(setting -> show(setting, news));
  }

  private void move(SessionInput.FiringsMoved moved, List<SessionEvent> news) {
    Set<FiringKey> asked = new HashSet<>(moved.firings());
    List<FiringResult> changed =
        log.all().stream()
            .filter(r -> asked.contains(r.key()) && r.shown().isPresent())
            .filter(r -> !r.shown().equals(Optional.of(moved.to())))
            .map(r -> r.moved(moved.to()))
            .toList();
    for (FiringResult result : changed) {
      log.replace(result);
      news.add(new SessionEvent.Changed(result));
    }
    boolean closed = withdraw(asked, news);
    if (closed || !changed.isEmpty()) {
      runDoneTold = false;
      goOn(news);
    }
  }

  /** Whether the open question fell because of these firings. */
  private boolean withdraw(Set<FiringKey> gone, List<SessionEvent> news) {
    Optional<Question> closed = questions.without(gone::contains);
    closed.ifPresent(question -> news.add(new SessionEvent.QuestionClosed(question)));
    return closed.isPresent();
  }

  /** The person's own choice stays on the screen where it is done already, or is being adjusted. */
  private void choose(DialSetting setting, List<SessionEvent> news) {
    staysHere = setup.isPresent() && (setup.get().phase() == Phase.ADJUSTING || isDone(setting));
    runDoneTold = false;
    show(setting, news);
  }

  private void show(DialSetting setting, List<SessionEvent> news) {
    boolean other = !shown.equals(Optional.of(setting));
    shown = Optional.of(setting);
    setting.untimedTest().ifPresent(check -> news.add(new SessionEvent.UntimedTestShown(check)));
    setting
        .speed()
        .ifPresent(
            speed -> {
              int wanted = setup.map(RunSetup::firingsPerSpeed).orElse(0);
              news.add(new SessionEvent.SpeedShown(speed, goodAt(speed), wanted));
              if (other && isToBeSetBeforeCocking(speed)) {
                news.add(new SessionEvent.SetBeforeCocking(speed));
              }
            });
  }

  private boolean isToBeSetBeforeCocking(MarkedSpeed speed) {
    List<MarkedSpeed> dial = dial();
    return setup.filter(s -> s.customs().topSpeedBeforeCocking()).isPresent()
        && !dial.isEmpty()
        && speed.equals(dial.get(dial.size() - 1));
  }

  private void goOn(List<SessionEvent> news) {
    if (setup.isEmpty() || shown.isEmpty() || runDoneTold) {
      return;
    }
    DialSetting here = shown.get();
    // Moving on while it is asked where the dial stands would only spread the confusion.
    boolean asked =
        questions.open().filter(q -> here.speed().equals(Optional.of(q.shown()))).isPresent()
            && log.triesCount(run, here) < mostTries(here);
    if (staysHere || asked || !isDone(here)) {
      show(here, news);
      return;
    }
    int tries = log.triesCount(run, here);
    int good = log.good(run, here);
    if (good < wanted(here)) {
      here.speed().ifPresent(speed -> news.add(new SessionEvent.EnoughToKnow(speed, tries, good)));
      here.untimedTest()
          .ifPresent(check -> news.add(new SessionEvent.EnoughOfUntimedTest(check, tries)));
    }
    Optional<DialSetting> next = queue.nextOpen(shown, this::isDone);
    next.ifPresent(open -> show(open, news));
    if (next.isEmpty()) {
      runDoneTold = true;
      news.add(new SessionEvent.RunDone());
    }
  }

  private boolean isDone(DialSetting setting) {
    if (setting.untimedTest().filter(UntimedTest::isOfTheLight).isPresent()) {
      return lightTestsDone.contains(setting.untimedTest().get());
    }
    int tries = log.triesCount(run, setting);
    if (log.good(run, setting) < wanted(setting)) {
      return tries >= mostTries(setting);
    }
    RunSetup asked = setup.orElseThrow();
    return !asked.criteria().untilDecided()
        || setting.speed().isEmpty()
        || tries >= Math.max(MOST_UNTIL_DECIDED, asked.mostTries())
        || verdictIsIn.of(asked, log.tries(run, setting).toList());
  }

  private int mostTries(DialSetting setting) {
    if (setting.speed().isPresent()) {
      return setup.orElseThrow().mostTries();
    }
    boolean trials = setting.untimedTest().filter(UntimedTest::isForTheEar).isPresent();
    return trials ? Math.max(ENOUGH_TRIES, 2 * wanted(setting)) : ENOUGH_TRIES;
  }

  /**
   * A check that came to its end once is done; wind and release is tried as often as a speed is
   * fired. Tests of the light are no firings.
   */
  private int wanted(DialSetting setting) {
    return setting
        .untimedTest()
        .map(check -> wanted(check, setup.orElseThrow()))
        .orElseGet(() -> setup.orElseThrow().firingsPerSpeed());
  }

  private static int wanted(UntimedTest check, RunSetup setup) {
    return switch (check) {
      case WIND_AND_RELEASE -> setup.firingsPerSpeed();
      case RELEASE_ALONE -> ALONE_FIRINGS;
      case B, T, SELF_TIMER -> 1;
      case LEAK, STOPS -> 0;
    };
  }

  /** Marked speeds of the dial from slow to fast; those of the run where the dial is not known. */
  private List<MarkedSpeed> dial() {
    if (setup.isEmpty()) {
      return List.of();
    }
    return Dial.ofKey(setup.get().dial())
        .map(Dial::speeds)
        .orElseGet(
            () ->
                setup.get().order().stream()
                    .distinct()
                    .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
                    .toList());
  }

  private List<MarkedSpeed> neighbours(MarkedSpeed speed) {
    List<MarkedSpeed> dial = dial();
    int here = dial.indexOf(speed);
    List<MarkedSpeed> neighbours = new ArrayList<>();
    if (here > 0) {
      neighbours.add(dial.get(here - 1));
    }
    if (here >= 0 && here + 1 < dial.size()) {
      neighbours.add(dial.get(here + 1));
    }
    return neighbours;
  }

  private void publishUnderway(long nowTicks, List<SessionEvent> news) {
    OptionalLong beganTicks = grouper.underwaySinceTicks();
    if (beganTicks.isEmpty() || lightSetting.holds(beganTicks.getAsLong())) {
      return;
    }
    if (grouper.isLight()) {
      grouper
          .openSinceTicks()
          .ifPresent(
              since -> {
                double open = board.rate().seconds(nowTicks - since);
                if (open > openLongSeconds(shown())) {
                  news.add(new SessionEvent.StillOpen(open));
                }
              });
      return;
    }
    if (provisionalTold || cocking.isLearning() || !isWorthALook()) {
      return;
    }
    lookedAtEdges = grouper.centreEdges();
    Optional<Firing> underway = grouper.underway();
    if (!(measure(underway.orElseThrow()) instanceof LeafExposure.Timed timed)) {
      return;
    }
    provisionalTold = true;
    Optional<Double> wanted = wantedSeconds();
    OptionalDouble error =
        wanted.isPresent()
            ? OptionalDouble.of(Stops.between(timed.effectiveSeconds(), wanted.get()))
            : OptionalDouble.empty();
    news.add(new SessionEvent.Provisional(timed, error));
  }

  /**
   * Whether the firing under way may have a figure that it had not before. In light that flickers
   * for long this is asked for ever more rarely, so that an edge costs no more than the one before.
   */
  private boolean isWorthALook() {
    int edges = grouper.centreEdges();
    return edges > lookedAtEdges && (edges <= EDGES_LOOKED_AT_EACH || edges >= 2 * lookedAtEdges);
  }

  private Optional<Double> wantedSeconds() {
    Reference reference = setup.map(RunSetup::reference).orElse(Reference.EXACT);
    return shown().map(speed -> speed.seconds(reference));
  }

  /** How long the shutter may be open before that is worth saying, in seconds. */
  private static double openLongSeconds(Optional<MarkedSpeed> speed) {
    return Math.max(OPEN_LONG_SECONDS, speed.map(s -> 3 * s.literalSeconds()).orElse(0.0));
  }

  private static FiringGrouper grouperFor(BoardTraits board) {
    return new FiringGrouper(Math.max(1, board.rate().ticks(QUIET_SECONDS)), board);
  }
}
