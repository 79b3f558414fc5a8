package org.halflight.rig;

import java.util.List;
import org.halflight.link.Link;
import org.halflight.link.PortCandidate;
import org.halflight.rig.RigMessage.Greeting;

/**
 * A rig that answered, with the link to it open.
 *
 * @param candidate where it is
 * @param link open; whoever takes this rig closes it
 * @param reader to go on reading with, as it may hold half a line
 * @param greeting what it said of itself
 * @param baudRate speed at which it answered
 * @param nextSequence line counter of the host's next command
 * @param lines what went over the wire until then at this speed, in order
 */
public record OpenRig(
    PortCandidate candidate,
    Link link,
    LineReader reader,
    Greeting greeting,
    int baudRate,
    int nextSequence,
    List<WireLine> lines) {
  public OpenRig {
    lines = List.copyOf(lines);
  }

  /** What the person calls this rig. */
  public String name() {
    return RigNames.of(greeting);
  }
}
