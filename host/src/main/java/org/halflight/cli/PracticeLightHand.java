package org.halflight.cli;

import java.util.Optional;
import org.halflight.extratest.FNumber;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedStops;

/** Works the model camera and the lamp of the practice rig. */
final class PracticeLightHand implements LightHand {
  private static final double IDLE_SECONDS = 0.3;

  /** Mean light over the pupil of {@code 1 - 0.1 r^2} seen a radius off, against in place. */
  private static final double MOVED_SHARE = (1 - 0.1 * 1.5) / (1 - 0.1 * 0.5);

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

  /** An invented panel whose light falls by a tenth from the middle of the pupil to its edge. */
  @Override
  public void panel(boolean moved) {
    rig.stop(moved ? MOVED_SHARE : 1);
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
