package org.halflight.extratest;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.LinkagePress;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;

/**
 * What one press of the linkage test comes to, in plain values.
 *
 * @param step what was asked
 * @param tripped whether light came
 * @param wind what the person found when they tried the film advance
 * @param again whether light came once more before the advance was tried
 * @param sign when the advance unlocked, where something tells: a figure of the finger's speed,
 *     never judged
 */
public record JudgedPress(
    LinkageStep step, boolean tripped, WindState wind, boolean again, UnlockSign sign) {
  /** A press whose order nothing tells, with light once at most. */
  public JudgedPress(LinkageStep step, boolean tripped, WindState wind) {
    this(step, tripped, wind, false, UnlockSign.NONE);
  }

  /**
   * A press in plain values.
   *
   * @param aheadSeconds how long before first light the knob moved, below zero after it; empty
   *     where nothing tells
   */
  public JudgedPress(
      LinkageStep step,
      boolean tripped,
      WindState wind,
      boolean again,
      OptionalDouble aheadSeconds) {
    this(
        step,
        tripped,
        wind,
        again,
        aheadSeconds.isPresent()
            ? new UnlockSign(aheadSeconds, UnlockSign.By.KNOB)
            : UnlockSign.NONE);
  }

  /** What a press of a session comes to; empty where it does not count. */
  public static Optional<JudgedPress> of(LinkagePress press) {
    return press.counts()
        ? Optional.of(
            new JudgedPress(
                press.step(),
                press.trips() > 0,
                press.wind(),
                press.trips() > 1,
                UnlockSign.of(press)))
        : Optional.empty();
  }

  /** The state in which it left the camera. */
  public PressOutcome outcome() {
    return PressOutcome.of(tripped, wind);
  }

  /** How long before first light the advance unlocked, in seconds; empty where nothing tells. */
  public OptionalDouble aheadSeconds() {
    return sign.aheadSeconds();
  }

  /** Which came first, as far as something tells. */
  public SqueezeOrder order() {
    return SqueezeOrder.of(aheadSeconds());
  }
}
