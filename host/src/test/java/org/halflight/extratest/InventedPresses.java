package org.halflight.extratest;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.WindState;

/** Presses of a linkage test in plain values; the camera is invented. */
public final class InventedPresses {
  private final List<JudgedPress> presses = new ArrayList<>();

  /** A whole test of a linkage that is right. */
  public static InventedPresses right() {
    InventedPresses all = new InventedPresses().press(LinkageStep.REST, false, WindState.LOCKED);
    for (LinkageStep step : List.of(LinkageStep.STOP, LinkageStep.SQUEEZE, LinkageStep.TAP)) {
      for (int i = 0; i < step.presses(); i++) {
        all.press(step, true, WindState.TURNS);
      }
    }
    return all;
  }

  /** One more press. */
  public InventedPresses press(LinkageStep step, boolean tripped, WindState wind) {
    presses.add(new JudgedPress(step, tripped, wind));
    return this;
  }

  /** One more slow squeeze that did both, with the knob moving so long before first light. */
  public InventedPresses squeeze(double aheadSeconds) {
    presses.add(
        new JudgedPress(
            LinkageStep.SQUEEZE, true, WindState.TURNS, false, OptionalDouble.of(aheadSeconds)));
    return this;
  }

  /** What they come to. */
  public LinkageJudgement judged() {
    return new LinkageJudgement(presses);
  }

  /** As they stand in the first run of a session. */
  public Linkage linkage(Phase phase) {
    return new Linkage(1, Optional.of(phase), judged(), Optional.empty(), Optional.empty());
  }
}
