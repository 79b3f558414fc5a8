package org.halflight.cli;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedStops;
import org.halflight.speeds.MarkedSpeed;

/** Works the model camera of the practice rig. */
class PracticeHand implements Hand {
  private static final double IDLE_SECONDS = 0.3;
  private static final double HELD_SECONDS = 1;

  private static final double SLOW_SECONDS = 0.15;

  private final PracticeRig rig;
  private final Queue<Double> turns = new ArrayDeque<>();

  PracticeHand(PracticeRig rig) {
    this.rig = rig;
  }

  /** Turns the screw of the linkage behind each of the next trials of it, by so many ms. */
  void willTurn(List<Double> millis) {
    turns.addAll(millis);
  }

  /** A slow speed keeps the sound of the closing away from that of the opening. */
  private MarkedSpeed slow() {
    return rig.shutter().dial().stream()
        .filter(speed -> speed.exactSeconds() <= SLOW_SECONDS)
        .findFirst()
        .orElse(rig.speed());
  }

  @Override
  @SuppressWarnings("ReturnValueIgnored") // What the model did must be found out through the rig.
  public void fire(MarkedSpeed shown) {
    rig.chooseSpeed(shown);
    rig.fire();
  }

  @Override
  public void tryOut(UntimedTest check) {
    switch (check) {
      case B -> {
        rig.holdOpen(true);
        rig.rest(HELD_SECONDS);
        rig.holdOpen(false);
      }
      case T -> {
        rig.pressAtT();
        rig.rest(HELD_SECONDS);
        rig.pressAtT();
      }
      case SELF_TIMER -> rig.fireBySelfTimer();
      case RELEASE_ALONE -> {
        rig.wind(false);
        fire(slow());
        rig.wind(true);
      }
      case WIND_AND_RELEASE -> {
        fire(slow());
        if (!turns.isEmpty()) {
          rig.turnLinkage(turns.remove());
        }
      }
      case LEAK, STOPS -> throw new IllegalArgumentException("not done by firing: " + check);
    }
  }

  @Override
  public void hold(boolean open) {
    rig.holdOpen(open);
  }

  @Override
  public LightHand light() {
    return new PracticeLightHand(rig, InventedStops.WORN);
  }

  @Override
  public void idle() {
    rig.rest(IDLE_SECONDS);
  }

  @Override
  public boolean works() {
    return true;
  }
}
