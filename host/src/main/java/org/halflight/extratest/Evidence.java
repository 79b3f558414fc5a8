package org.halflight.extratest;

import java.util.List;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LinkagePress;
import org.halflight.session.PlungerAt;
import org.halflight.session.Session;

/**
 * All that there is of a session, or of several, to find out from.
 *
 * @param firings in order
 * @param readings of the light with the shutter at rest, in order
 * @param presses of the linkage test, in order
 * @param plungers readings of a screw plunger, in order
 */
public record Evidence(
    List<FiringResult> firings,
    List<LightReading> readings,
    List<LinkagePress> presses,
    List<PlungerAt> plungers) {
  public Evidence {
    firings = List.copyOf(firings);
    readings = List.copyOf(readings);
    presses = List.copyOf(presses);
    plungers = List.copyOf(plungers);
  }

  /** All of a session. */
  public static Evidence of(Session session) {
    return new Evidence(
        session.results(), session.readings(), session.presses(), session.plungers());
  }

  /** Firings and readings alone. */
  public static Evidence of(List<FiringResult> firings, List<LightReading> readings) {
    return new Evidence(firings, readings, List.of(), List.of());
  }
}
