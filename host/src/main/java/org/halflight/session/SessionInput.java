package org.halflight.session;

import java.util.Objects;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.time.TickRate;

/** Something that a session is told. */
public sealed interface SessionInput {
  /**
   * A rig is there, or there again, or started anew.
   *
   * @param serial its serial number
   * @param bootCount how often its board has started
   */
  record RigIs(String serial, long bootCount, TickRate rate) implements SessionInput {
    public RigIs {
      Objects.requireNonNull(serial);
      Objects.requireNonNull(rate);
    }
  }

  /** An edge came. */
  record EdgeAt(Edge edge) implements SessionInput {}

  /**
   * Rig time has passed, and these were the levels.
   *
   * @param levels bit n is the level of the channel with code n
   */
  record BeatAt(long ticks, int levels) implements SessionInput {}

  /** Something was lost. */
  record Damaged(Firing.Damage damage) implements SessionInput {}

  /** The link is gone: what was under way will not be seen to its end. */
  record LinkLost() implements SessionInput {}

  /** The light was set. */
  record LightSet(LightLevels levels) implements SessionInput {}

  /** A run begins; the first speed of its order is shown. */
  record RunBegins(RunSetup setup) implements SessionInput {}

  /** The person chose a speed. */
  record SpeedChosen(MarkedSpeed speed) implements SessionInput {}

  /** The person does not count the last firing. */
  record LastRejected(String reason) implements SessionInput {}

  /** The shutter hung open and the person closed it. */
  record ClosedByHand() implements SessionInput {}

  /** Nothing more will come. */
  record Ends() implements SessionInput {}
}
