package org.halflight.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.halflight.box.BenchInABox;
import org.halflight.box.ScriptedButton;
import org.halflight.desk.view.BenchView;
import org.halflight.link.Ports;
import org.halflight.link.serial.SerialPorts;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.shuttermodel.ButtonLinkage;
import org.halflight.shuttermodel.InventedFit;
import org.halflight.signal.LightCurve;

/**
 * An invented camera of four speeds before the real firmware in its simulator, worked by scripts of
 * light and pins. Its slowest speed is found a third of a stop long. All figures are simulated.
 */
final class BoardCameraByHand implements RepairCamera {
  private static final double RAMP_SECONDS = 0.001;
  private static final double PINCHED = 1.32;
  private static final double CLEANED_SECONDS = 0.25;

  /** In a slow squeeze the advance unlocks so long before the shutter trips. */
  private static final double AHEAD_SECONDS = 0.006;

  /** Three firings of a shutter are never quite alike. */
  private static final double[] SCATTER = {0.99, 1, 1.01};

  private final BenchInABox box;
  private final DeskHand hand;
  private final ScriptedButton button;
  private final Set<String> curves = new HashSet<>();
  private final Map<String, Double> seconds =
      new HashMap<>(Map.of("1/4", 0.315, "1/30", 1 / 32.0, "1/125", 1 / 128.0, "1/500", 1 / 512.0));
  private double drag = 1;
  private int fired;

  BoardCameraByHand(Path folder) throws IOException, InterruptedException {
    box =
        BenchInABox.start(
            Files.createDirectories(folder), List.of("light all 40 4000", BenchInABox.NAMED));
    hand = new DeskHand(() -> box.limit()::isOver);
    button = new ScriptedButton(box, AHEAD_SECONDS);
    box.curve("slow", curve(0.125));
  }

  @Override
  public DeskHand hand() {
    return hand;
  }

  @Override
  public Supplier<Ports> ports() {
    return () -> new SerialPorts(List.of(box.port()));
  }

  @Override
  public long nanos() {
    return box.nanos();
  }

  @Override
  public String speeds() {
    return "1/4, 1/30, 1/125, 1/500";
  }

  @Override
  public String twoSpeeds() {
    return "1/4, 1/125";
  }

  @Override
  public String pair() {
    return twoSpeeds();
  }

  @Override
  public void hold(boolean open) {
    say(open ? "hold +0 1" : "hold +0 0");
  }

  @Override
  public void bulb(boolean open) {
    hold(open);
  }

  /** The flash contact closes when the blades are open. */
  @Override
  public void fire(BenchView shown) {
    String marking =
        shown.shown().flatMap(setting -> setting.speed()).map(its -> its.label()).orElse("1/125");
    double open =
        seconds.get(marking)
            * SCATTER[fired++ % SCATTER.length]
            * (marking.equals("1/4") ? drag : 1);
    String name = "c" + Math.round(open * 1e6);
    try {
      if (curves.add(name)) {
        box.curve(name, curve(open));
      }
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
    say(
        String.format(
            Locale.ROOT,
            "pin +%.6f contact 1%npin +%.6f contact 0%nfire +0.05 %s",
            0.05 + RAMP_SECONDS,
            0.05 + open + RAMP_SECONDS,
            name));
  }

  private static LightCurve curve(double open) {
    return new LightCurve(
        new double[] {0, RAMP_SECONDS, open, open + RAMP_SECONDS}, new double[] {0, 1, 1, 0});
  }

  @Override
  public WindState press(LinkageStep step) {
    button.getReady();
    button.press(step);
    hand.await("the press is over", v -> button.isPressOver(Long.MAX_VALUE));
    return step == LinkageStep.REST ? WindState.LOCKED : button.wind().orElseThrow();
  }

  @Override
  public void fits(InventedFit fit) {
    drag = fit == InventedFit.SOUND ? 1 : PINCHED;
  }

  @Override
  public void clean() {
    seconds.put("1/4", CLEANED_SECONDS);
  }

  @Override
  public void link(ButtonLinkage linkage) {
    // It is as it should be from the beginning.
  }

  private void say(String line) {
    try {
      box.say(line);
    } catch (IOException gone) {
      throw new UncheckedIOException(gone);
    }
  }

  @Override
  public void close() throws IOException {
    box.close();
  }
}
