package org.halflight.desk;

import java.awt.event.KeyEvent;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.halflight.desk.view.BenchView;
import org.halflight.link.Ports;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedFit;

/** The invented camera of the practice rig, worked by the keys of the window. */
final class PracticeCameraByHand implements RepairCamera {
  private static final int FASTER = 6;

  private final DeskHand hand = new DeskHand();

  /** Faster than the clock on the wall: nobody's hands have to follow. */
  private final LongSupplier nanos;

  PracticeCameraByHand() {
    long start = System.nanoTime();
    nanos = () -> start + FASTER * (System.nanoTime() - start);
  }

  @Override
  public DeskHand hand() {
    return hand;
  }

  @Override
  public Supplier<Ports> ports() {
    return NoPorts::new;
  }

  @Override
  public long nanos() {
    return nanos.getAsLong();
  }

  @Override
  public String speeds() {
    return "";
  }

  @Override
  public String twoSpeeds() {
    return "1/60, 1/125";
  }

  @Override
  public String pair() {
    return "1, 1/15";
  }

  @Override
  public void hold(boolean open) {
    hand.window().onModelCamera(camera -> camera.hold(open));
  }

  @Override
  public void fire(BenchView shown) {
    hand.key(KeyEvent.VK_F);
  }

  @Override
  public void bulb(boolean open) {
    hand.key(KeyEvent.VK_F);
  }

  @Override
  public WindState press(LinkageStep step) {
    hand.key(KeyEvent.VK_F);
    BenchView found =
        hand.await("the wind is tried", v -> v.linkage().doFirst().contains("press "));
    return found.linkage().doFirst().contains("press W") ? WindState.TURNS : WindState.LOCKED;
  }

  @Override
  public void fits(InventedFit fit) {
    hand.window().onModelCamera(camera -> camera.useFit(fit));
  }

  @Override
  public void clean() {
    hand.mishap("clean");
  }

  @Override
  public void link(ButtonLinkage linkage) {
    hand.window().onModelCamera(camera -> camera.adjustLinkage(linkage));
  }

  @Override
  public void close() {
    // Nothing is held.
  }
}
