package org.halflight.cli;

import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Check;
import org.halflight.shuttermodel.InventedStops;
import org.halflight.speeds.MarkedSpeed;

/** Works the model camera of the practice rig. */
final class PracticeHand implements Hand {
  private static final double IDLE_SECONDS = 0.3;
  private static final double HELD_SECONDS = 1;

  private final PracticeRig rig;

  PracticeHand(PracticeRig rig) {
    this.rig = rig;
  }

  @Override
  @SuppressWarnings("ReturnValueIgnored") // What the model did must be found out through the rig.
  public void fire(MarkedSpeed shown) {
    rig.chooseSpeed(shown);
    rig.fire();
  }

  @Override
  public void tryOut(Check check) {
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
      case WIND_AND_RELEASE, RELEASE_ALONE -> fire(rig.speed());
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
