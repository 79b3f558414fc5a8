package org.halflight.desk;

import java.util.List;
import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.FNumber;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.LightReading;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedContact;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.InventedStops;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;

/**
 * The invented camera on the practice rig, and the hand that works it: turns the dial to what the
 * screen shows, cocks and fires, and makes the mistakes that it is asked for. For one thread.
 */
final class ModelCamera {
  /** The light that is left after the stop was moved: not so little that no time can be taken. */
  static final double MOVED_STOP_SHARE = 0.8;

  /** Light that comes through the shut blades while they are cocked: eight stops down. */
  private static final double LEAK_SHARE = 1 / 256.0;

  /** How the linkage of the camera is found: it frees too early by a plain margin. */
  private static final double FOUND_OUT_MILLIS = 6;

  private static final double SLOW_SECONDS = 0.15;

  private final PracticePorts ports;
  private final long seed;
  private List<MarkedSpeed> dial;
  private boolean cleaned;
  private boolean bouncing;
  private PracticeMishap next = PracticeMishap.NONE;
  private boolean forgetsDial;
  private boolean stopMoved;
  private double widestValue;
  private boolean heldOpen;
  private Optional<InventedContact> contact = Optional.empty();

  private ModelCamera(PracticePorts ports, List<MarkedSpeed> dial, long seed) {
    this.ports = ports;
    this.dial = dial;
    this.seed = seed;
  }

  /** A rig with an uncleaned shutter on it. */
  static ModelCamera begin(DeskSurroundings surroundings) {
    List<MarkedSpeed> dial = Dial.find("leaf").orElseThrow().speeds();
    PracticeRig rig =
        PracticeRig.paced(
            InventedShutters.dirtySlowTrain(dial, surroundings.seed()),
            SensorSet.INVENTED,
            surroundings.seed(),
            surroundings.nanos(),
            PracticeRig.startsBefore(surroundings.clock().instant()));
    rig.turnLinkage(FOUND_OUT_MILLIS);
    return new ModelCamera(new PracticePorts(rig), dial, surroundings.seed());
  }

  PracticePorts ports() {
    return ports;
  }

  /** Puts the same shutter with another dial on the rig, when the dial is another. */
  void useDial(List<MarkedSpeed> wanted) {
    if (!dial.containsAll(wanted)) {
      dial = List.copyOf(wanted);
      putOn();
    }
  }

  /** Turns the dial there, unless it is forgotten this time, and fires. */
  void fire(MarkedSpeed shown) {
    letClose();
    PracticeMishap mishap = next;
    next = PracticeMishap.NONE;
    boolean turns = !forgetsDial && dial.contains(shown);
    forgetsDial = false;
    ports.onBench(
        rig -> {
          if (turns) {
            rig.chooseSpeed(shown);
          }
          rig.fire(mishap);
        });
  }

  /**
   * Does what a check asks for. At B and T one key opens, and the next closes.
   *
   * @param check the check of the moment
   */
  void tryOut(UntimedTest check) {
    switch (check) {
      case B -> hold(!heldOpen);
      case T -> {
        heldOpen = !heldOpen;
        ports.onBench(PracticeRig::pressAtT);
      }
      case SELF_TIMER -> {
        letClose();
        ports.onBench(PracticeRig::fireBySelfTimer);
      }
      case WIND_AND_RELEASE, RELEASE_ALONE -> forTheEar(check);
      case LEAK, STOPS -> fire();
    }
  }

  /** Who turns the dial away from B or T has let the shutter close. */
  private void letClose() {
    if (heldOpen) {
      hold(false);
    }
  }

  /** Fires at whatever speed the dial stands at. */
  void fire() {
    letClose();
    PracticeMishap mishap = next;
    next = PracticeMishap.NONE;
    ports.onBench(rig -> rig.fire(mishap));
  }

  /** At a speed slow enough that the closing is not heard with the opening. */
  private void forTheEar(UntimedTest check) {
    letClose();
    ports.onBench(
        rig -> {
          dial.stream()
              .filter(speed -> speed.exactSeconds() <= SLOW_SECONDS)
              .findFirst()
              .ifPresent(rig::chooseSpeed);
          rig.wind(check != UntimedTest.RELEASE_ALONE);
          rig.fire(PracticeMishap.NONE);
          rig.wind(true);
        });
  }

  /** Turns the screw of the linkage: above 0 the film advance frees earlier by so many ms. */
  void turnLinkage(double millis) {
    ports.onBench(rig -> rig.turnLinkage(millis));
  }

  /** Whether a contact at the film advance is wired in place of the click sensor. */
  void contactAtAdvance(boolean wired) {
    ports.onBench(rig -> rig.contactAtAdvance(wired));
  }

  /** Cocks, and light comes through meanwhile. */
  void cockWithLight() {
    ports.onBench(rig -> rig.cock(true));
  }

  void hold(boolean open) {
    heldOpen = open;
    ports.onBench(rig -> rig.holdOpen(open));
  }

  /** Does what a test of the light asks for. Its stop is worn, and its blades leak when cocked. */
  void does(LightPlan.Step step) {
    ports.onBench(
        rig -> {
          rig.leak(0, LEAK_SHARE);
          rig.cover(step.what() == LightReading.What.LAMP_COVERED);
          if (step.what() == LightReading.What.SHUT_COCKED) {
            rig.cock(false);
          } else if (step.what() == LightReading.What.FULL) {
            rig.holdOpen(true);
          } else if (step.what() == LightReading.What.STOP) {
            double value = new FNumber(step.at()).apertureValue();
            if (step.needed()) {
              widestValue = value;
              rig.holdOpen(true);
            }
            rig.stop(InventedStops.WORN.share(value - widestValue, step.opening()));
          }
        });
  }

  /** A test of the light is over: all is as it was before. */
  void isAtRest() {
    ports.onBench(
        rig -> {
          rig.cover(false);
          rig.leak(0, 0);
          rig.holdOpen(false);
          rig.stop(1);
        });
  }

  /** An invented disc turns before the light, or no longer. */
  void turnDisc(boolean turns) {
    ports.onBench(
        rig -> {
          if (turns) {
            rig.turnDisc(TurningDisc.invented(seed));
          } else {
            rig.stopDisc();
          }
        });
  }

  void nextMishap(PracticeMishap mishap) {
    next = mishap;
  }

  void forgetDialOnce() {
    forgetsDial = true;
  }

  /** The stop is moved, or put back. */
  void moveStop(boolean moved) {
    stopMoved = moved;
    ports.onBench(rig -> rig.dim(moved ? MOVED_STOP_SHARE : 1));
  }

  boolean isStopMoved() {
    return stopMoved;
  }

  /** The slow-speed train is cleaned, or dirty again. The shutter has rested meanwhile. */
  void clean(boolean clean) {
    cleaned = clean;
    putOn();
  }

  /** Another shutter is put on, whose blades bounce after closing, or the first one again. */
  void bounce(boolean bounces) {
    bouncing = bounces;
    putOn();
  }

  /** Another flash contact than that of the shutter; empty for that. */
  void useContact(Optional<InventedContact> another) {
    contact = another;
    putOn();
  }

  boolean isCleaned() {
    return cleaned;
  }

  private void putOn() {
    LeafShutter shutter =
        bouncing
            ? InventedShutters.bouncing(dial, seed + 2)
            : cleaned
                ? InventedShutters.cleanedSlowTrain(dial, seed + 1)
                : InventedShutters.dirtySlowTrain(dial, seed);
    LeafShutter its = contact.map(other -> shutter.with(other.model())).orElse(shutter);
    heldOpen = false;
    ports.onBench(rig -> rig.setShutter(its));
  }
}
