package org.halflight.extratest;

import java.util.OptionalDouble;
import org.halflight.session.LinkageStep;
import org.halflight.session.WindState;

/**
 * What one press of the linkage test comes to, in plain values.
 *
 * @param step what was asked
 * @param tripped whether light came
 * @param wind what the person found when they tried the film advance
 * @param again whether light came once more before the advance was tried
 * @param aheadSeconds how long before first light the advance was seen to unlock, below zero after
 *     it; empty where nothing tells. A figure of the finger's speed, never judged
 */
public record JudgedPress(
    LinkageStep step, boolean tripped, WindState wind, boolean again, OptionalDouble aheadSeconds) {
  /** A press whose order nothing tells, with light once at most. */
  public JudgedPress(LinkageStep step, boolean tripped, WindState wind) {
    this(step, tripped, wind, false, OptionalDouble.empty());
  }

  /** The state in which it left the camera. */
  public PressOutcome outcome() {
    return PressOutcome.of(tripped, wind);
  }

  /** Which came first, by {@link #aheadSeconds}. */
  public SqueezeOrder order() {
    return SqueezeOrder.of(aheadSeconds);
  }
}
