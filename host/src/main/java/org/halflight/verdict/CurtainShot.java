package org.halflight.verdict;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.Exposure;
import org.halflight.session.FiringResult;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;

/**
 * One good firing of a curtain shutter.
 *
 * @param speed the marked speed
 * @param wantedSeconds what it should be at every place
 * @param travel what the passing of the curtains told
 * @param contactSeconds first closing of the flash contact, on the clock of the travel; empty where
 *     it did not close
 * @param afterRest whether it was the first after a rest
 */
public record CurtainShot(
    MarkedSpeed speed,
    double wantedSeconds,
    CurtainTravel travel,
    OptionalDouble contactSeconds,
    boolean afterRest) {

  /** Of a firing; empty where it was none of curtains, was rejected, or has no marked speed. */
  public static Optional<CurtainShot> of(FiringResult firing) {
    if (firing.rejection().isPresent()
        || firing.shown().isEmpty()
        || !(firing.exposure() instanceof Exposure.Timed timed)
        || !(timed.travel() instanceof CurtainTravel travel)) {
      return Optional.empty();
    }
    OptionalDouble contact =
        firing.firing().of(Channel.CONTACT).stream()
            .filter(Edge::high)
            .mapToDouble(edge -> firing.realRate().seconds(edge.ticks() - travel.zeroTicks()))
            .findFirst();
    return Optional.of(
        new CurtainShot(
            firing.shown().orElseThrow(),
            firing.referenceSeconds().orElseThrow(),
            travel,
            contact,
            firing.afterRest()));
  }
}
