package org.halflight.workflow;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;
import org.halflight.firstlight.FirstStep;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.rig.practice.WiringFault;
import org.halflight.session.Adjuster;
import org.halflight.session.AdjusterTurn;
import org.halflight.session.Assembly;
import org.halflight.session.DialSetting;
import org.halflight.session.LightReading;
import org.halflight.session.LinkageStep;
import org.halflight.session.OwnTravel;
import org.halflight.session.RunOption;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.TurnCount;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.CurtainScrew;
import org.halflight.shuttermodel.CurtainShutter;
import org.halflight.shuttermodel.Finger;
import org.halflight.shuttermodel.InventedBar;
import org.halflight.shuttermodel.InventedContact;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.shuttermodel.InventedFlap;
import org.halflight.shuttermodel.InventedLamp;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.InventedStops;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.shuttermodel.SensorBar;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.signal.BoardTraits;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Millimetres;

/**
 * Works the invented camera on the practice rig, and makes the mistakes that it is asked for. On a
 * paced rig the person presses the keys; on an unpaced one it needs nobody. For one thread.
 */
public class PracticeOperator implements CameraOperator {
  /** The light that is left after the aperture was moved: enough to take times by. */
  private static final double MOVED_STOP_SHARE = 0.8;

  /** Light that comes through the shut blades while they are cocked: eight stops down. */
  private static final double LEAK_SHARE = 1 / 256.0;

  /**
   * An invented panel, whose light falls by a tenth from the middle of the pupil to its edge: the
   * mean of {@code 1 - 0.1 r^2} over the pupil seen a radius off, against in place.
   */
  private static final double PANEL_MOVED_SHARE = (1 - 0.1 * 1.5) / (1 - 0.1 * 0.5);

  /** A step of moving the lamp, by its light. Invented, as are the shares below. */
  private static final double LAMP_STEP = 1.2;

  private static final double ROOM_SHARE = 0.2;
  private static final double BARE_LIGHT = 0.95;
  private static final double HALF_LIGHT = 0.5;
  private static final double HAND_SECONDS = 0.8;
  private static final double HAND_STEP_SECONDS = 0.05;
  private static final double SCREEN_SHARE = 0.02;

  /** How the linkage of the camera is found. */
  private static final ButtonLinkage FOUND = ButtonLinkage.ADVANCE_FIRST;

  /** Which draws of the seed are the finger's. */
  private static final long FINGER = 11;

  private static final double SLOW_SECONDS = 0.15;
  private static final double HELD_SECONDS = 1;
  private static final double TAP_SECONDS = 0.15;
  private static final double IDLE_SECONDS = 0.3;

  /** On a paced rig all that it is asked for is done well before. */
  private static final long DONE_AFTER_NANOS = 300_000_000;

  private final PracticePorts ports;
  private final Optional<LongSupplier> clock;
  private final long seed;
  private final Queue<ButtonLinkage> adjustments = new ArrayDeque<>();
  private final SeededDraws finger;
  private List<MarkedSpeed> dial;
  private boolean cleaned;
  private boolean bouncing;
  private PracticeMishap next = PracticeMishap.NONE;
  private boolean forgetsDial;
  private boolean heldOpen;
  private double holdSeconds = HELD_SECONDS;
  private double widestValue;
  private long doneAtNanos;
  private Optional<InventedContact> contact = Optional.empty();
  private InventedFit fit = InventedFit.SOUND;
  private Optional<Assembly> assembly = Optional.empty();
  private List<Assembly> stages = List.of();

  /** The curtain shutter on the rig, as it was found and turned since; empty for the leaf. */
  private Optional<CurtainShutter> curtains = Optional.empty();

  private InventedBar bar = InventedBar.RIGHT;

  /** What the person has said so far to have turned. */
  private Map<Adjuster, TurnCount> said = Map.of();

  /**
   * @param clock of the rig in nanoseconds; empty for an unpaced one
   * @param seed of the shutters that are put on later
   */
  private PracticeOperator(PracticeRig rig, Optional<LongSupplier> clock, long seed) {
    this.ports = new PracticePorts(rig);
    this.clock = clock;
    this.seed = seed;
    this.finger = new SeededDraws(SeededDraws.seedOf(seed, FINGER));
    this.dial = List.copyOf(rig.shutter().dial());
    this.doneAtNanos = clock.map(LongSupplier::getAsLong).orElse(0L);
  }

  /** Works the camera that is on an unpaced rig, with nobody there. */
  public PracticeOperator(PracticeRig rig, long seed) {
    this(rig, Optional.empty(), seed);
  }

  /** Works the uncleaned camera on a paced rig, where the person presses the keys. */
  public static PracticeOperator paced(long seed, LongSupplier nanos, Instant now) {
    return paced(BoardTraits.Kind.FULL, seed, nanos, now);
  }

  /** The same for another kind of rig than the full one. */
  public static PracticeOperator paced(
      BoardTraits.Kind kind, long seed, LongSupplier nanos, Instant now) {
    PracticeRig rig =
        PracticeRig.paced(
            kind, uncleaned(seed), sensors(kind), seed, nanos, PracticeRig.startsBefore(now));
    rig.adjustLinkage(FOUND);
    return new PracticeOperator(rig, Optional.of(nanos), seed);
  }

  /** An unpaced rig with an uncleaned shutter on it, whose linkage is out. */
  public static PracticeRig unpacedRig(long seed, Instant now) {
    return unpacedRig(BoardTraits.Kind.FULL, seed, now);
  }

  /** The same for another kind of rig than the full one. */
  public static PracticeRig unpacedRig(BoardTraits.Kind kind, long seed, Instant now) {
    PracticeRig rig =
        PracticeRig.unpaced(
            kind, uncleaned(seed), sensors(kind), seed, PracticeRig.startsBefore(now));
    rig.adjustLinkage(FOUND);
    return rig;
  }

  private static SensorSet sensors(BoardTraits.Kind kind) {
    return kind == BoardTraits.Kind.STARTER ? SensorSet.STARTER : SensorSet.INVENTED;
  }

  private static LeafShutter uncleaned(long seed) {
    return InventedShutters.dirtySlowTrain(Dial.find("leaf").orElseThrow().speeds(), seed);
  }

  /** Another kind of rig is on the cable, with the same camera and lamp. */
  public void useRig(BoardTraits.Kind kind) {
    ports.onBench(rig -> rig.rewire(kind, sensors(kind)));
    ports.plugIn();
  }

  /** The port of the rig, for whoever looks for rigs. */
  public PracticePorts ports() {
    return ports;
  }

  @Override
  public boolean works() {
    return true;
  }

  @Override
  public boolean answers() {
    return clock.isEmpty();
  }

  @Override
  public void willHold(double seconds) {
    holdSeconds = seconds;
  }

  @Override
  public void fire(Optional<DialSetting> shown) {
    fire(shown, holdSeconds);
  }

  @Override
  public void tap(Optional<DialSetting> shown) {
    fire(shown, TAP_SECONDS);
  }

  private void fire(Optional<DialSetting> shown, double heldSeconds) {
    press(shown);
    if (heldOpen) {
      onBench(rig -> rig.rest(heldSeconds));
      press(shown);
    }
  }

  /** The camera is put together as far as this. */
  @Override
  public void assemble(Assembly now) {
    if (!assembly.equals(Optional.of(now))) {
      assembly = Optional.of(now);
      putOn();
    }
  }

  @Override
  public Optional<Assembly> nextStage(Assembly now) {
    int here = stages.indexOf(now);
    return here >= 0 && here + 1 < stages.size()
        ? Optional.of(stages.get(here + 1))
        : Optional.empty();
  }

  /** Whoever needs nobody goes through these stages of assembly, in order. */
  public void willAssemble(List<Assembly> order) {
    stages = List.copyOf(order);
  }

  /** How the parts of the camera fit. */
  public void useFit(InventedFit parts) {
    fit = parts;
    putOn();
  }

  /** Whether the part that does not fit is on; where nobody says, the camera is complete. */
  private boolean isFelt() {
    return assembly
        .map(
            its ->
                switch (fit) {
                  case SOUND -> false;
                  case PINCHED_CASE -> its.has(Assembly.Part.RING);
                  case TOUCHING_CELL -> its.has(Assembly.Part.REAR_CELL);
                  case WRONG_COVER -> its.has(Assembly.Part.COVER);
                })
        .orElse(true);
  }

  /**
   * Presses the release once: at B and T it opens the shutter, and the next time it closes it.
   *
   * @param shown what the dial is turned to first, unless that is forgotten this time; empty for
   *     whatever it is at
   */
  public void press(Optional<DialSetting> shown) {
    Optional<UntimedTest> test = shown.flatMap(DialSetting::untimedTest);
    if (test.equals(Optional.of(UntimedTest.B))) {
      hold(!heldOpen);
    } else if (test.equals(Optional.of(UntimedTest.T))) {
      heldOpen = !heldOpen;
      onBench(PracticeRig::pressAtT);
    } else {
      letClose();
      if (test.equals(Optional.of(UntimedTest.SELF_TIMER))) {
        onBench(PracticeRig::fireBySelfTimer);
      } else {
        fireAt(shown.flatMap(DialSetting::speed));
      }
    }
  }

  /** Who turns the dial away from B or T has let the shutter close. */
  private void letClose() {
    if (heldOpen) {
      hold(false);
    }
  }

  private void fireAt(Optional<MarkedSpeed> shown) {
    Optional<MarkedSpeed> turned = shown.filter(speed -> !forgetsDial && dial.contains(speed));
    PracticeMishap mishap = next;
    forgetsDial = false;
    next = PracticeMishap.NONE;
    onBench(
        rig -> {
          turned.ifPresent(rig::chooseSpeed);
          rig.fire(mishap);
        });
  }

  @Override
  public void press(LinkageStep step) {
    onBench(
        rig -> {
          dial.stream()
              .filter(speed -> speed.exactSeconds() <= SLOW_SECONDS)
              .findFirst()
              .ifPresent(rig::chooseSpeed);
          switch (step) {
            case REST -> rig.tap();
            case STOP -> rig.press(Finger.stopping(finger));
            case SQUEEZE -> rig.press(Finger.slow(finger));
            case TAP -> {
              rig.press(Finger.quick(finger));
              rig.press(Finger.quick(finger));
            }
          }
        });
  }

  @Override
  public Optional<WindState> wind() {
    boolean[] turns = new boolean[1];
    onBench(rig -> turns[0] = rig.wind());
    return Optional.of(turns[0] ? WindState.TURNS : WindState.LOCKED);
  }

  @Override
  public void getReady() {
    onBench(PracticeRig::getReady);
  }

  @Override
  public boolean adjusts() {
    Optional<ButtonLinkage> next = Optional.ofNullable(adjustments.poll());
    next.ifPresent(this::adjustLinkage);
    return next.isPresent();
  }

  @Override
  public void hold(boolean open) {
    heldOpen = open;
    onBench(rig -> rig.holdOpen(open));
  }

  /** The aperture of the camera is worn, and its blades leak when they are cocked. */
  @Override
  public void prepare(LightPlan.Step step) {
    if (step.opensShutter()) {
      hold(true);
    }
    onBench(
        rig -> {
          rig.leak(0, LEAK_SHARE);
          rig.cover(step.what() == LightReading.What.LAMP_COVERED);
          switch (step.what()) {
            case SHUT_COCKED -> rig.cock(false);
            case STOP -> rig.stop(share(step));
            case PANEL_IN_PLACE -> rig.stop(1);
            case PANEL_MOVED -> rig.stop(PANEL_MOVED_SHARE);
            case LAMP_COVERED, SHUT_UNCOCKED, FULL -> {
              // Lamp and shutter are as asked for.
            }
          }
        });
  }

  private double share(LightPlan.Step step) {
    double value = new FNumber(step.at()).apertureValue();
    if (step.opensShutter()) {
      widestValue = value;
    }
    return InventedStops.WORN.share(value - widestValue, step.opening());
  }

  @Override
  public void putBack() {
    hold(false);
    onBench(
        rig -> {
          rig.cover(false);
          rig.leak(0, 0);
          rig.stop(1);
        });
  }

  @Override
  public void screen(Optional<Boolean> white) {
    onBench(rig -> rig.screen(white.orElse(false)));
  }

  /** The lamp is moved closer to the sensor, or further away, by a step. */
  public void moveLamp(boolean closer) {
    onBench(rig -> rig.lamp(rig.lamp() * (closer ? LAMP_STEP : 1 / LAMP_STEP)));
  }

  /** The lamp stands so that so much of the usual full light comes through. */
  public void placeLamp(double share) {
    onBench(rig -> rig.lamp(share));
  }

  /** Another lamp, or the usual one. */
  public void useLamp(InventedLamp lamp) {
    onBench(rig -> rig.lamp(lamp.lamp()));
  }

  /** The room is light, or dark again. */
  public void lightRoom(boolean light) {
    onBench(rig -> rig.room(light ? ROOM_SHARE : 0));
  }

  /** The screen shines on the sensor when it is white, or is turned away. */
  public void turnScreen(boolean reaches) {
    onBench(rig -> rig.screenReaches(reaches ? SCREEN_SHARE : 0));
  }

  /** The lamp shines on the bare sensors; what a hand does takes a second or two. */
  @Override
  public void tryInput(FirstStep step) {
    onBench(
        rig -> {
          switch (step) {
            case CENTRE -> {
              wave(rig, true);
              wave(rig, false);
              wave(rig, true);
            }
            case OUTER_A, OUTER_B -> {
              wave(rig, true);
              rig.coverSensor(step.input().orElseThrow(), HAND_SECONDS);
            }
            case LED, THRESHOLDS -> rig.room(0);
            default -> step.input().ifPresent(input -> rig.edgeTrain(input, 1 / HAND_SECONDS, 2));
          }
        });
    ports.onBench(rig -> doneAtNanos += rig.nanosAhead());
  }

  /** A hand takes its time: the light comes and goes in steps. */
  private static void wave(PracticeRig rig, boolean light) {
    rig.room(HALF_LIGHT);
    rig.pause(HAND_STEP_SECONDS);
    rig.room(light ? BARE_LIGHT : 0);
    rig.pause(HAND_SECONDS);
  }

  /** Wires the rig otherwise. */
  public void wire(WiringFault fault) {
    onBench(rig -> rig.wire(fault));
  }

  @Override
  public void turnDisc(boolean turns) {
    onBench(
        rig -> {
          if (turns) {
            rig.turnDisc(TurningDisc.invented(seed));
          } else {
            rig.stopDisc();
          }
        });
  }

  @Override
  public boolean isDone() {
    return clock.isEmpty() || clock.get().getAsLong() >= doneAtNanos;
  }

  @Override
  public boolean isPressOver(long seenTicks) {
    boolean[] over = new boolean[1];
    ports.onBench(rig -> over[0] = rig.isPressOver(seenTicks));
    return over[0];
  }

  @Override
  public void idle() {
    if (clock.isEmpty()) {
      onBench(rig -> rig.rest(IDLE_SECONDS));
    }
  }

  /** Puts the same shutter with another dial on the rig, when the dial is another. */
  public void useDial(List<MarkedSpeed> wanted) {
    if (!dial.containsAll(wanted)) {
      dial = List.copyOf(wanted);
      curtains = curtains.map(its -> its.withDial(dial));
      putOn();
    }
  }

  /** Adjusts the linkage. */
  public void adjustLinkage(ButtonLinkage linkage) {
    onBench(rig -> rig.adjustLinkage(linkage));
  }

  /** Adjusts the linkage like this, one after the other, where the test of it says to. */
  public void willAdjust(List<ButtonLinkage> linkages) {
    adjustments.addAll(linkages);
  }

  /** Fits a contact at the wind knob, or takes it off. */
  public void fitKnobContact(boolean fitted) {
    onBench(rig -> rig.fitKnobContact(fitted));
  }

  /** Cocks, and light comes through meanwhile. */
  public void cockWithLight() {
    onBench(rig -> rig.cock(true));
  }

  /** Something goes wrong with the next firing. */
  public void nextMishap(PracticeMishap mishap) {
    next = mishap;
  }

  /** The dial is not turned at the next firing, or it is after all. */
  public void forgetDialOnce(boolean forgets) {
    forgetsDial = forgets;
  }

  /** The aperture is moved, or put back. */
  public void moveStop(boolean moved) {
    onBench(rig -> rig.dim(moved ? MOVED_STOP_SHARE : 1));
  }

  /** The slow-speed train is cleaned, or dirty again. The shutter has rested meanwhile. */
  public void clean(boolean clean) {
    cleaned = clean;
    if (clean) {
      curtains = curtains.map(its -> its.in(its.condition().cleaned()));
    }
    putOn();
  }

  /** Another shutter is put on, whose blades bounce after closing, or the first one again. */
  public void bounce(boolean bounces) {
    bouncing = bounces;
    putOn();
  }

  /** The body has reflex viewing with such a flap, or none. */
  public void useFlap(InventedFlap flap) {
    onBench(rig -> rig.flap(flap));
  }

  /** Another flash contact than that of the shutter; empty for that. */
  public void useContact(Optional<InventedContact> another) {
    contact = another;
    putOn();
  }

  /** A form of a run, with what a person would note of such curtains. */
  public static RunForm form(InventedCurtains kind, RunForm form, List<UntimedTest> tests) {
    ShutterUnderTest its = form.shutter();
    return new RunForm(
        new ShutterUnderTest(its.camera(), kind.kind(), its.dial(), its.reference(), its.customs()),
        form.phase(),
        form.speeds(),
        form.firings(),
        form.restSeconds(),
        tests,
        said(kind));
  }

  /** What a person would note of such curtains in the form of a run. */
  public static Map<RunOption<?>, String> said(InventedCurtains kind) {
    SensorBar its = InventedBar.RIGHT.bar(kind.design().frameMillimetres());
    return Map.of(
        RunOption.FRAME,
        kind.frame().text(),
        RunOption.OUTER_SENSORS,
        Millimetres.text(its.outerMillimetres()),
        RunOption.SENSOR_SLIT,
        Millimetres.text(its.slitMillimetres()),
        RunOption.CURTAIN_GAP,
        Millimetres.text(its.gapMillimetres()),
        RunOption.LAMP_DISTANCE,
        Millimetres.text(its.lampMillimetres()),
        RunOption.LAMP_SIZE,
        Millimetres.text(its.lampWidthMillimetres()),
        RunOption.OWN_TRAVEL,
        new OwnTravel(kind.design().travelMillis(), kind.design().frameMillimetres()).text(),
        RunOption.X_SPEED,
        kind.xSpeed());
  }

  /** The marked speed at which a screw shows best. */
  public static MarkedSpeed shows(
      CurtainScrew screw, InventedCurtains kind, List<MarkedSpeed> dial) {
    String wanted =
        switch (screw) {
          case FIRST_TENSION, FIRST_BRAKE, CONTACT -> kind.xSpeed();
          case SECOND_TENSION, SLIT, SECOND_BRAKE -> "";
          case ESCAPEMENT -> "1/8";
        };
    return dial.stream()
        .filter(speed -> speed.label().equals(wanted))
        .findFirst()
        .orElse(dial.get(dial.size() - 1));
  }

  /** The camera on the rig is another: one with curtains, as found, or empty for the leaf one. */
  public void useCurtains(Optional<InventedCurtains> kind) {
    curtains = kind.map(its -> its.found(dial, seed));
    cleaned = false;
    putOn();
    placeBar(bar);
  }

  /** How the sensors are placed and lit behind curtains. */
  public void placeBar(InventedBar placed) {
    bar = placed;
    curtains.ifPresentOrElse(
        its ->
            onBench(
                rig -> rig.place(placed.bar(its.design().frameMillimetres()), placed.sensors())),
        () -> onBench(rig -> rig.place(InventedBar.RIGHT.bar(36), SensorSet.INVENTED)));
  }

  /**
   * Turns the screws of the curtain shutter as far as the person says to have turned theirs, and
   * back again where that is undone. What was turned before this camera came is not turned again.
   */
  public void follow(List<AdjusterTurn> turns) {
    Map<Adjuster, TurnCount> now = TurnCount.of(turns);
    for (Adjuster each : Adjuster.values()) {
      double before = changeOf(said, each);
      double more = changeOf(now, each) - before;
      if (more != 0) {
        turn(CurtainScrew.valueOf(each.name()), more);
      }
    }
    said = now;
  }

  private static double changeOf(Map<Adjuster, TurnCount> counts, Adjuster adjuster) {
    return Optional.ofNullable(counts.get(adjuster)).map(TurnCount::change).orElse(0.0);
  }

  /** Turns a screw of the curtain shutter, by turns inwards; a leaf shutter has none. */
  public void turn(CurtainScrew screw, double turns) {
    onBench(
        rig ->
            curtains =
                curtains.map(
                    its -> {
                      CurtainShutter turned = its.turn(screw, turns, rig.firings().size());
                      rig.adjustShutter(turned);
                      return turned;
                    }));
  }

  /** Turns a screw of the curtain shutter as far as is right, as nobody can who does not know. */
  public double setRight(CurtainScrew screw) {
    double turns = curtains.map(its -> its.turnsToSetRight(screw)).orElse(0.0);
    turn(screw, turns);
    return turns;
  }

  private void putOn() {
    if (curtains.isPresent()) {
      putOn(curtains.get());
    } else {
      putOnLeaf();
    }
  }

  private void putOn(CurtainShutter its) {
    CurtainShutter wired = contact.map(other -> its.with(other.model())).orElse(its);
    heldOpen = false;
    onBench(rig -> rig.setShutter(wired));
  }

  private void putOnLeaf() {
    LeafShutter shutter =
        bouncing
            ? InventedShutters.bouncing(dial, seed + 2)
            : cleaned
                ? InventedShutters.cleanedSlowTrain(dial, seed + 1)
                : InventedShutters.dirtySlowTrain(dial, seed);
    LeafShutter wired = contact.map(other -> shutter.with(other.model())).orElse(shutter);
    LeafShutter its = isFelt() ? fit.on(wired) : wired;
    heldOpen = false;
    onBench(rig -> rig.setShutter(its));
  }

  private void onBench(Consumer<PracticeRig> doing) {
    ports.onBench(doing);
    clock.ifPresent(nanos -> doneAtNanos = nanos.getAsLong() + DONE_AFTER_NANOS);
  }
}
