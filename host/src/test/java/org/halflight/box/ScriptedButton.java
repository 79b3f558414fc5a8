package org.halflight.box;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;
import org.halflight.workflow.CameraOperator;

/**
 * An invented camera with a foil on its wind knob before the simulated board, and whoever presses
 * its button: scripts of pins and light, by the board's own time.
 */
public final class ScriptedButton implements CameraOperator {
  /** How long a press is looked after: the knob counts until a second after first light. */
  private static final double AFTER_SECONDS = 1.4;

  private static final double TICKS_A_NANO = 0.016;

  /** The board's counter begins a little later than its power, at most by so much. */
  private static final long START_NANOS = 500_000_000;

  private static final double STOPS_SECONDS = 0.2;

  private final BenchInABox box;

  /** From the advance unlocking to first light in a slow squeeze; below zero light comes first. */
  private final double aheadSeconds;

  private final List<LinkageStep> pressed = new ArrayList<>();
  private long restsAtNanos;
  private boolean isUnlocked;

  public ScriptedButton(BenchInABox box, double aheadSeconds) {
    this.box = box;
    this.aheadSeconds = aheadSeconds;
  }

  /** The steps that were pressed, in order. */
  List<LinkageStep> pressed() {
    return pressed;
  }

  @Override
  public boolean works() {
    return true;
  }

  @Override
  public boolean answers() {
    return true;
  }

  /** The film is wound, and the foil laid on the wires again, with bounces. */
  @Override
  public void getReady() {
    isUnlocked = false;
    say(List.of("burst +0.001 knob 5 300"));
    rest(0.1);
  }

  @Override
  public void press(LinkageStep step) {
    pressed.add(step);
    List<String> lines = new ArrayList<>();
    if (step == LinkageStep.REST) {
      lines.add("ring +0.05 click 3000 3");
      say(lines);
      rest(0.3);
      return;
    }
    double ahead = step == LinkageStep.TAP ? aheadSeconds / 100 : aheadSeconds;
    double first = step == LinkageStep.SQUEEZE ? 1 : 0.3;
    double unlocks = first + Math.max(0, -ahead);
    double lights = first + Math.max(0, ahead);
    // Who stops at the first sign stops a reaction later.
    boolean tripsToo = step != LinkageStep.STOP || lights < unlocks + STOPS_SECONDS;
    boolean unlocksToo = step != LinkageStep.STOP || unlocks < lights + STOPS_SECONDS;
    double back = Math.max(unlocks, lights) + STOPS_SECONDS;
    lines.add("pin +0.02 release 1");
    lines.add(at("pin +%.6f release 0", back));
    if (unlocksToo) {
      lines.add(at("burst +%.6f knob 12 400", unlocks));
    }
    if (tripsToo) {
      lines.add(at("fire +%.6f slow", lights));
      lines.add(at("ring +%.6f click 4000 3", lights - 0.0005));
    }
    isUnlocked = unlocksToo;
    if (step == LinkageStep.TAP) {
      // Pressed once more without winding.
      back += 0.5;
      lines.add(at("pin +%.6f release 1", back - 0.1));
      lines.add(at("pin +%.6f release 0", back));
    }
    say(lines);
    rest(back + AFTER_SECONDS);
  }

  @Override
  public Optional<WindState> wind() {
    return Optional.of(isUnlocked ? WindState.TURNS : WindState.LOCKED);
  }

  @Override
  public boolean isPressOver(long seenTicks) {
    return box.nanos() >= restsAtNanos && seenTicks >= TICKS_A_NANO * (restsAtNanos - START_NANOS);
  }

  private void rest(double seconds) {
    restsAtNanos = Math.max(restsAtNanos, box.nanos() + Math.round(1e9 * seconds));
  }

  private void say(List<String> lines) {
    try {
      box.say(String.join("\n", lines));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String at(String line, double seconds) {
    return String.format(Locale.ROOT, line, seconds);
  }
}
