package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.Exposure;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;

/**
 * What becomes of a firing when it is over: light of cocking, held open for the light, the late
 * light of a press, or a release; and what is asked and said because of it.
 */
final class FiringSettler {
  private final FiringLog log;
  private final DialQuestions questions;
  private final RunProgress progress;
  private final RigOnBench rig;
  private final LightState light;
  private final FiringMeter meter;
  private final UnderwayWatch underway;
  private final CockingWatch cocking = new CockingWatch();
  private final PlateauWatch plateaus = new PlateauWatch();
  private final ContactCaution contactCaution = new ContactCaution();
  private Optional<FiringKey> awaitsLight = Optional.empty();
  private boolean releaseIsWired;
  private boolean capOn;
  private FiringConditions conditions = FiringConditions.NONE;

  FiringSettler(
      FiringLog log,
      DialQuestions questions,
      RunProgress progress,
      RigOnBench rig,
      LightState light,
      FiringMeter meter,
      UnderwayWatch underway) {
    this.log = log;
    this.questions = questions;
    this.progress = progress;
    this.rig = rig;
    this.light = light;
    this.meter = meter;
    this.underway = underway;
  }

  CockingWatch cocking() {
    return cocking;
  }

  PlateauWatch plateaus() {
    return plateaus;
  }

  ContactCaution contactCaution() {
    return contactCaution;
  }

  boolean isCapOn() {
    return capOn;
  }

  void onCap(boolean on) {
    capOn = on;
  }

  /** The conditions that last, from the next firing on. */
  FiringConditions conditions() {
    return conditions;
  }

  void onConditions(FiringConditions lasting) {
    conditions = lasting;
  }

  /** Another rig, whose release may not be wired. */
  void onOtherRig() {
    releaseIsWired = false;
  }

  /** Light that comes from here on is not that of a press of before. */
  void forgetPress() {
    awaitsLight = Optional.empty();
  }

  /** Ticks start again. */
  void forgetTicks() {
    forgetPress();
    plateaus.forget();
  }

  /** The press whose light may still come, or may have been among what was lost since a time. */
  Optional<FiringResult> pressWithoutLight(long sinceTicks) {
    return awaitsLight
        .flatMap(log::find)
        .filter(r -> r.outcome() == Outcome.DID_NOT_OPEN && r.rejection().isEmpty())
        .filter(r -> ReleaseTiming.mayCome(r.firing(), sinceTicks, r.rate()));
  }

  /** A firing is over. */
  void settle(Firing firing, List<SessionEvent> events) {
    FiringKey key = rig.keyOf(firing);
    OptionalDouble plateau = plateaus.countsOf(firing, rig.rate());
    Optional<FiringResult> known = log.find(key);
    if (known.isPresent()) {
      // What is told twice changes nothing, and what is new is the rest of it, behind a break.
      if (!known.get().firing().edges().containsAll(firing.edges())) {
        Firing whole = ReleaseTiming.joinBroken(known.get().firing(), firing);
        release(key, whole, plateau, known, events);
      }
    } else if (light.isForSetting(firing.firstTicks())) {
      addHeldForLight(key, firing, events);
    } else {
      settleNew(key, firing, plateau, events);
    }
  }

  private void settleNew(
      FiringKey key, Firing firing, OptionalDouble plateau, List<SessionEvent> events) {
    boolean pressed = ReleaseTiming.isPressed(firing);
    Exposure exposure = meter.exposure(firing);
    boolean hasLight = ReleaseTiming.hasLight(firing) || exposure.curtains().isPresent();
    releaseIsWired |= pressed;
    // Light came in: a cap that was said to be on is off, whatever was forgotten.
    capOn &= !hasLight;
    List<SessionEvent> afterwards = new ArrayList<>();
    if (cocking.claims(
        firing,
        exposure,
        rig.rate(),
        pressed,
        releaseIsWired,
        progress.wantedSeconds(),
        afterwards)) {
      addCocking(key, firing, exposure, events, afterwards);
      return;
    }
    Optional<FiringResult> press =
        awaitsLight
            .flatMap(log::find)
            .filter(r -> r.rejection().isEmpty())
            .filter(r -> ReleaseTiming.belongs(firing, r.firing(), rig.rate()));
    if (pressed || hasLight) {
      awaitsLight = Optional.empty();
    }
    if (press.isPresent()) {
      log.joined(key, press.get().key());
      Firing whole = ReleaseTiming.join(press.get().firing(), firing);
      release(press.get().key(), whole, plateau, press, events);
    } else {
      release(key, firing, plateau, press, events);
    }
  }

  private void addHeldForLight(FiringKey key, Firing firing, List<SessionEvent> events) {
    add(
        meter.result(
            log.size() + 1,
            key,
            firing,
            progress.place(Optional.empty(), false),
            Outcome.HELD_FOR_LIGHT,
            meter.exposure(firing),
            Optional.empty(),
            FiringNotes.NONE),
        events);
  }

  private void addCocking(
      FiringKey key,
      Firing firing,
      Exposure exposure,
      List<SessionEvent> events,
      List<SessionEvent> afterwards) {
    boolean leak = progress.setup().filter(s -> s.customs().bladesShutWhileCocking()).isPresent();
    if (leak) {
      afterwards.add(new SessionEvent.LeakWhileCocking(key));
    }
    FiringNotes notes = notes(OptionalDouble.empty(), OptionalDouble.empty(), leak);
    Outcome outcome = Outcome.LIGHT_WHILE_COCKING;
    add(result(key, firing, exposure, outcome, notes, Optional.empty()), events);
    events.addAll(afterwards);
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
      List<SessionEvent> events) {
    Exposure exposure = underway.asClosed(firing, meter.exposure(firing));
    Optional<UntimedTest> test = press.map(FiringResult::untimedTest).orElseGet(this::testShown);
    Outcome outcome = OutcomeRule.of(firing, exposure, rig.rate(), test, capOn);
    FiringNotes notes = notes(meter.delaySeconds(firing, exposure), plateau, false);
    FiringResult result = result(key, firing, exposure, outcome, notes, press);
    add(result, events);
    if (outcome == Outcome.DID_NOT_OPEN) {
      awaitsLight = Optional.of(key);
    }
    if (result.isBySelfTimer() && !test.equals(Optional.of(UntimedTest.SELF_TIMER))) {
      events.add(
          new SessionEvent.IsTheSelfTimerOn(key, result.releaseDelaySeconds().getAsDouble()));
    }
    notes.plateauShare().ifPresent(share -> light.onShare(share, Optional.of(key), events));
    // While curtains are adjusted step by step, another speed than the marked one is what is worked
    // on.
    if (progress.step().isEmpty()) {
      questions.settled(result, result.shown().map(progress::neighbours).orElse(List.of()), events);
    }
    meter.oneLevel().measureAgain(result, log, events);
    meter.learn(result, events);
    if (progress.isQuick() && test.filter(UntimedTest::holds).isPresent()) {
      held(result, events);
    }
    progress.goOn(events);
  }

  /** The shutter was held open in a quick look: where nobody had set the light, this does. */
  private void held(FiringResult result, List<SessionEvent> events) {
    boolean opened =
        result.outcome() == Outcome.OPENS_HOLDS_CLOSES
            || result.outcome() == Outcome.NEVER_FULLY_OPEN
            || OneLevelWatch.awaitsOtherLevel(result.exposure());
    if (!opened) {
      return;
    }
    if (light.set().isPresent()) {
      progress.heldOpen();
      return;
    }
    HeldLight seen =
        HeldLight.of(
            plateaus.heldCounts(result.firing(), result.rate()),
            plateaus.darkCounts(),
            meter.thresholdsAt());
    if (!(seen instanceof HeldLight.TooShort)) {
      progress.heldOpen();
    }
    events.add(new SessionEvent.LightWasHeld(seen));
    if (seen instanceof HeldLight.Known known) {
      light.onHeld(known.light());
      meter.inTheLight(known.light()).forEach(now -> log.change(now, events));
      meter.completeByCurve(events);
    }
  }

  private Optional<UntimedTest> testShown() {
    return progress.shown().flatMap(DialSetting::untimedTest);
  }

  private FiringResult result(
      FiringKey key,
      Firing firing,
      Exposure exposure,
      Outcome outcome,
      FiringNotes notes,
      Optional<FiringResult> press) {
    Optional<OneLevel> seen = meter.seenNow();
    if (press.isPresent()) {
      FiringResult earlier = press.get();
      FiringNotes all =
          notes
              .moved(earlier.notes().movedFrom())
              .rejectedAs(earlier.notes())
              .under(earlier.conditions());
      return meter.result(
          earlier.number(), key, firing, earlier.place(), outcome, exposure, seen, all);
    }
    boolean afterRest =
        progress.setup().filter(s -> s.phase() == Phase.AS_FOUND).isPresent()
            && !log.hasOfTheShutter(progress.run())
            && FiringLog.isOfTheShutter(outcome, exposure);
    FiringPlace place = progress.place(progress.shown(), afterRest);
    FiringNotes all = outcome == Outcome.LIGHT_WHILE_COCKING ? notes : notes.under(conditions);
    return meter.result(log.size() + 1, key, firing, place, outcome, exposure, seen, all);
  }

  private FiringNotes notes(OptionalDouble delay, OptionalDouble plateau, boolean leak) {
    OptionalDouble share =
        meter.levels().isPresent() ? light.share(plateau) : OptionalDouble.empty();
    return new FiringNotes(
        delay,
        plateau,
        share,
        light.doubts(share),
        leak,
        capOn,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        FiringConditions.NONE);
  }

  private void add(FiringResult result, List<SessionEvent> events) {
    if (log.knows(result.key())) {
      log.replace(result);
    } else {
      log.add(result);
    }
    light.onFiring(result);
    events.add(new SessionEvent.Settled(result));
    contactCaution.settled(result, events);
  }

  /** The knob contact moved near a settled firing. */
  void addKnob(FiringGrouper.LateKnob late, List<SessionEvent> events) {
    log.find(rig.keyOf(late.firstTicks()))
        .ifPresent(
            result -> {
              FiringResult whole = result.withKnob(late.edges());
              log.replace(whole);
              events.add(new SessionEvent.KnobAdded(whole));
            });
  }

  /** The light curve of a settled firing has come. */
  void addCurve(FiringResult result, List<SessionEvent> events) {
    log.replace(result);
    light.onFiring(result);
    events.add(new SessionEvent.CurveAdded(result));
    if (progress.isQuick() || meter.oneLevel().isFixed()) {
      meter.oneLevel().measureAgain(result, log, events);
      if (progress.isShownDone()) {
        progress.goOn(events);
      }
    }
  }
}
