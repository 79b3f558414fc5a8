package org.halflight.session;

import java.util.List;
import java.util.Objects;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;

/**
 * What a run is asked to do.
 *
 * @param camera the owner's label of the camera; may be empty
 * @param phase where in the work it stands
 * @param dial name of the dial
 * @param order the speeds to fire, in order
 * @param reference how the markings are read
 * @param firingsPerSpeed good firings wanted of each, from 1
 */
public record RunSetup(
    String camera,
    Phase phase,
    String dial,
    List<MarkedSpeed> order,
    Reference reference,
    int firingsPerSpeed) {
  public RunSetup {
    Objects.requireNonNull(camera);
    Objects.requireNonNull(phase);
    Objects.requireNonNull(dial);
    Objects.requireNonNull(reference);
    order = List.copyOf(order);
    if (order.isEmpty()) {
      throw new IllegalArgumentException("a run has at least one speed");
    }
    if (firingsPerSpeed < 1) {
      throw new IllegalArgumentException("a run wants at least one firing of each speed");
    }
  }
}
