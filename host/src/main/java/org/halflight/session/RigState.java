package org.halflight.session;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.profile.ClockRate;

/**
 * How the rig stood when a firing was made, beside its profile: what the session itself found out.
 *
 * @param liveClock rate of the board's clock by the pings of this session, which times are worked
 *     out with; empty where a profile tells the rate, or nothing does
 * @param checked whether a rig check of this session came before it
 * @param lightSpanCounts full less dark light as they were set, in counts of the converter; empty
 *     where they were not
 * @param panelFall the most by which light falls from the middle of the pupil to its edge, as a
 *     share, by the last test of the panel in this session; empty before one
 */
public record RigState(
    Optional<ClockRate> liveClock,
    boolean checked,
    OptionalDouble lightSpanCounts,
    OptionalDouble panelFall) {
  /** Nothing is known. */
  public static final RigState UNKNOWN =
      new RigState(Optional.empty(), false, OptionalDouble.empty());

  /** With a panel that nobody tested. */
  public RigState(Optional<ClockRate> liveClock, boolean checked, OptionalDouble lightSpanCounts) {
    this(liveClock, checked, lightSpanCounts, OptionalDouble.empty());
  }
}
