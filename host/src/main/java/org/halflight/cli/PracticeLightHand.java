package org.halflight.cli;

import java.util.Optional;
import org.halflight.everyday.FNumber;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedStops;

/** Works the model camera and the lamp of the practice rig. */
final class PracticeLightHand implements LightHand {
  private static final double IDLE_SECONDS = 0.3;

  private final PracticeRig rig;
  private final InventedStops stops;
  private Optional<FNumber> widest = Optional.empty();

  PracticeLightHand(PracticeRig rig, InventedStops stops) {
    this.rig = rig;
    this.stops = stops;
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

  /** The first stop of a check is the widest, at which the light was set. */
  @Override
  public void stop(FNumber number, boolean opening) {
    widest = widest.or(() -> Optional.of(number));
    rig.stop(stops.share(number.apertureValue() - widest.get().apertureValue(), opening));
  }

  @Override
  public void isAtRest() {
    rig.cover(false);
    rig.holdOpen(false);
    rig.stop(1);
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
