package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.LightReading;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionInput.LevelStands;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;

/**
 * The light of a session at work: it is set and read here, and the thresholds that stand for it are
 * put back after the rig has started anew. For one thread.
 */
public final class LightKeeper {
  private final Workbench workbench;
  private final Consumer<RigCommand> send;
  private final ThresholdKeeper thresholds = new ThresholdKeeper();
  private final LevelTurner turner = new LevelTurner();
  private Optional<LightSetting> setting = Optional.empty();
  private Optional<LightProbe> probe = Optional.empty();
  private Optional<AimMeter> meter = Optional.empty();
  private boolean aims;
  private boolean reads;

  /** A supply that has moved further since the light was set is another one. Our choice. */
  private static final double SUPPLY_MOVES_MOST = 0.05;

  /** Asked and said once: until the rig is greeted again, another one may be there. */
  private boolean rigCannotSweep;

  /**
   * @param send takes commands whose answers are waited for
   */
  LightKeeper(Workbench workbench, Consumer<RigCommand> send) {
    this.workbench = workbench;
    this.send = send;
  }

  /** Begins to set the light; the shutter is closed. */
  public LightSetting set() {
    endAim();
    LightSetting begun =
        new LightSetting(
            !rigCannotSweep,
            session().isOneLevelRig(),
            session().hasFixedLevel(),
            !session().isOneLevelRig());
    setting = Optional.of(begun);
    workbench.handle(new SessionInput.LightBeingSet(true));
    send.accept(begun.begin());
    return begun;
  }

  /** The person holds the shutter open; counts where the light setting asks for it just now. */
  public void shutterIsOpen() {
    setting
        .filter(its -> its.step() == LightSetting.Step.OPEN_THE_SHUTTER)
        .ifPresent(its -> send.accept(its.shutterIsOpen()));
  }

  /** Setting the light is given up; the thresholds are those of the light before. */
  public void leave() {
    endSetting();
    restore();
  }

  /** Somebody looks at the light meter: what light comes moves its needle. */
  public void showMeter() {
    if (meter.isEmpty()) {
      meter = Optional.of(newMeter());
    }
  }

  /** Nobody looks at the light meter any more. */
  public void hideMeter() {
    endAim();
    meter = Optional.empty();
  }

  /**
   * The light is aimed: the meter asks every sensor for light, and openings until the end of it are
   * no firings.
   */
  public void aim() {
    if (!aims) {
      aims = true;
      AimMeter begun = newMeter();
      meter = Optional.of(begun);
      workbench.handle(new SessionInput.LightBeingSet(true));
      workbench.leavesOut(true);
      send.accept(begun.begin());
    }
  }

  private AimMeter newMeter() {
    BoardTraits board =
        workbench.fold().greeting().map(RigMessage.Greeting::board).orElse(BoardTraits.USUAL);
    AimMeter begun = new AimMeter(board);
    session().light().map(LightLevels::darkCounts).ifPresent(begun::dark);
    return begun;
  }

  /** The light is aimed no more; the meter asks for nothing. */
  public void endAim() {
    if (aims) {
      stopAiming();
      meter.map(AimMeter::end).ifPresent(send);
    }
  }

  private void stopAiming() {
    if (aims) {
      aims = false;
      workbench.leavesOut(false);
      workbench.handle(new SessionInput.LightBeingSet(false));
    }
  }

  /** Whether the light is being aimed. */
  public boolean isAiming() {
    return aims;
  }

  /** The meter that somebody looks at. */
  public Optional<AimMeter> meter() {
    return meter;
  }

  /** Hears every beat, also those of before the answer to a command. */
  void onTime(RigEvent.TimeAt beat) {
    meter.ifPresent(its -> its.onTime(beat));
  }

  /** Whether the light is being set or read now. */
  public boolean isUnderWay() {
    return setting.isPresent() || reads;
  }

  /** Readings of the light begin: openings until their end are no releases. */
  public void beginReadings() {
    endAim();
    reads = true;
    workbench.handle(new SessionInput.LightBeingSet(true));
  }

  /** Reads the light as it stands now; what was read goes to the session. */
  public LightProbe read(LightReading.What what, String at, boolean opening) {
    LightProbe begun = new LightProbe(what, at, opening);
    probe = Optional.of(begun);
    send.accept(begun.begin());
    return begun;
  }

  /** Readings of the light end. */
  public void endReadings() {
    probe = Optional.empty();
    if (reads) {
      reads = false;
      workbench.handle(new SessionInput.LightBeingSet(false));
    }
  }

  /** Whether the thresholds of this light are on their way back to a board that restarted. */
  public boolean isRestoring() {
    return thresholds.isRestoring();
  }

  /** Nothing is under way that another command could get between. */
  boolean isIdle() {
    return !isUnderWay() && !aims && probe.isEmpty();
  }

  /** The session ends, and what is under way with it. */
  void end() {
    stopAiming();
    endSetting();
    endReadings();
  }

  /** The rig is lost. */
  void isLost() {
    stopAiming();
    probe.ifPresent(LightProbe::lost);
  }

  /** The rig comes back from other work: its thresholds are those of this session again. */
  void standsAsBefore() {
    if (session().light().isEmpty() && !session().isOneLevelRig()) {
      ThresholdCodes codes = ThresholdCodes.AFTER_START;
      send.accept(new RigCommand.SetThresholds(codes.low(), codes.high()));
    }
    restore();
  }

  /**
   * What is to be done about the light after a line of the rig.
   *
   * @param news that it brought
   * @return what else there is to tell
   */
  List<SessionEvent> after(List<SessionEvent> news) {
    if (session().isOneLevelRig()
        && setting.isEmpty()
        && news.stream().anyMatch(LightKeeper::sawLight)) {
      if (session().hasFixedLevel()) {
        send.accept(new RigCommand.AskThresholds());
      } else {
        move(turner.turn());
      }
    }
    return thresholds.isOff() ? workbench.handle(new SessionInput.LightForgotten()) : List.of();
  }

  /** What waits for the rig goes on. */
  List<SessionEvent> onEvent(RigEvent said) {
    List<SessionEvent> news = new ArrayList<>(probed(said));
    meter.flatMap(its -> its.onEvent(said)).ifPresent(send);
    if (setting.isPresent()) {
      news.addAll(go(setting.get(), said));
    } else if (said instanceof RigEvent.Restarted) {
      // Its greeting may not have come through; without it nobody knows which start this is.
      send.accept(new RigCommand.AskGreeting());
    } else if (said instanceof RigMessage.Greeting) {
      rigCannotSweep = false;
      restore();
    } else if (session().hasFixedLevel()) {
      news.addAll(supply(said));
    } else if (session().isOneLevelRig()) {
      turner.onEvent(said).ifPresent(next -> news.addAll(follow(next)));
    } else {
      thresholds.onEvent(said).ifPresent(send);
    }
    return news;
  }

  /** A command of the session stays without an answer. */
  List<SessionEvent> unanswered() {
    probe.ifPresent(LightProbe::lost);
    List<SessionEvent> news = new ArrayList<>();
    setting.ifPresent(
        its -> {
          its.unanswered();
          news.addAll(settle(its));
        });
    news.addAll(ended());
    return news;
  }

  private List<SessionEvent> probed(RigEvent said) {
    if (probe.isEmpty()) {
      return List.of();
    }
    LightProbe under = probe.get();
    under.onEvent(said).ifPresent(send);
    return ended();
  }

  /** What was read, when the reading is over. */
  private List<SessionEvent> ended() {
    Optional<LightProbe> over = probe.filter(under -> under.step() != LightProbe.Step.READING);
    if (over.isPresent()) {
      probe = Optional.empty();
    }
    return over.flatMap(LightProbe::reading)
        .map(reading -> workbench.handle(new SessionInput.LightRead(reading)))
        .orElse(List.of());
  }

  private List<SessionEvent> go(LightSetting its, RigEvent said) {
    its.onEvent(said).ifPresent(send);
    return settle(its);
  }

  private List<SessionEvent> settle(LightSetting its) {
    List<SessionEvent> news = new ArrayList<>();
    if (its.step() == LightSetting.Step.DONE || its.step() == LightSetting.Step.REFUSED) {
      endSetting();
      rigCannotSweep |= its.rigCannotSweep();
      TripPoints trips = its.trips().orElse(TripPoints.EXACT);
      its.levels()
          .ifPresent(
              set ->
                  // Firings that waited for full light are seen otherwise now.
                  workbench.handle(new SessionInput.LightSet(set, trips, its.outer())).stream()
                      .filter(SessionEvent.Changed.class::isInstance)
                      .forEach(news::add));
    }
    if (its.step() == LightSetting.Step.REFUSED
        || (its.step() == LightSetting.Step.DONE && session().isOneLevelRig())) {
      // It may have moved the thresholds already.
      restore();
    }
    return news;
  }

  private void endSetting() {
    if (setting.isPresent()) {
      setting = Optional.empty();
      workbench.handle(new SessionInput.LightBeingSet(false));
    }
  }

  /** A board that starts has its own thresholds; those of this session's light go back to it. */
  private void restore() {
    if (session().hasFixedLevel()) {
      send.accept(new RigCommand.AskThresholds());
    } else if (session().isOneLevelRig()) {
      move(turner.begin(session().light(), session().trips()));
    } else {
      session()
          .light()
          .flatMap(light -> thresholds.restore(light, session().trips()))
          .ifPresent(send);
    }
  }

  private List<SessionEvent> follow(LevelTurner.Next next) {
    if (next instanceof LevelTurner.Next.Send given) {
      send.accept(given.command());
      return List.of();
    }
    return workbench.handle(
        next instanceof LevelTurner.Next.Stands stands
            ? new LevelStands(Optional.of(stands.level()))
            : new SessionInput.LightForgotten());
  }

  /** The reference of a rig of a fixed level tells how the supply has moved. */
  private List<SessionEvent> supply(RigEvent said) {
    boolean off =
        said instanceof RigMessage.Thresholds read
            && session()
                .light()
                .filter(
                    set ->
                        Math.abs(read.lowSum64() / 64.0 / set.lowCounts() - 1) > SUPPLY_MOVES_MOST)
                .isPresent();
    return off ? workbench.handle(new SessionInput.LightForgotten()) : List.of();
  }

  private void move(RigCommand threshold) {
    workbench.handle(new LevelStands(Optional.empty()));
    send.accept(threshold);
  }

  private Session session() {
    return workbench.fold().session();
  }

  private static boolean sawLight(SessionEvent news) {
    return news instanceof SessionEvent.Settled settled
        && !settled.result().firing().of(Channel.CENTRE_LOW).isEmpty();
  }
}
