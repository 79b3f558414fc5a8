package org.halflight.desk;

import java.util.List;
import org.halflight.link.Link;
import org.halflight.link.LinkRefusedException;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;

/** A computer without a port. */
final class NoPorts implements Ports {
  @Override
  public List<PortCandidate> candidates() {
    return List.of();
  }

  @Override
  public Link open(PortCandidate candidate, int baudRate) {
    throw new LinkRefusedException(LinkRefusedException.Reason.ABSENT, "There is no port.");
  }
}
