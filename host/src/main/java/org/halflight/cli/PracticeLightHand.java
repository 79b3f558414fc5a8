package org.halflight.cli;

import org.halflight.everyday.FNumber;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedStops;

/** Works the model camera and the lamp of the practice rig. */
final class PracticeLightHand implements LightHand {
  private static final double IDLE_SECONDS = 0.3;

  private final PracticeRig rig;
  private final InventedStops stops;
  private final FNumber widest;

  PracticeLightHand(PracticeRig rig, InventedStops stops, FNumber widest) {
    this.rig = rig;
    this.stops = stops;
    this.widest = widest;
  }

  @Override
  public void cover(boolean covered) {
    rig.cover(covered);
  }

  @Override
  public void cock() {
    rig.cock(false);
  }

  @Override
  public void hold(boolean open) {
    rig.holdOpen(open);
  }

  @Override
  public void stop(FNumber number, boolean opening) {
    rig.stop(stops.share(number.apertureValue() - widest.apertureValue(), opening));
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
