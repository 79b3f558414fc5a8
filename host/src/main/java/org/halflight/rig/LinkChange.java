package org.halflight.rig;

import java.util.Optional;
import org.halflight.link.LinkState;
import org.halflight.rig.RigMessage.Greeting;

/**
 * A change between host and rig, or news of a search that goes on.
 *
 * @param hostNanos when, by the host's clock that never runs back
 * @param state how things stand now
 * @param sentence what happened, what it means for the data, and what to do
 * @param greeting the rig that is connected or was lost; empty while none was found yet
 * @param ports what the search found on the ports; empty where none was made
 */
public record LinkChange(
    long hostNanos,
    LinkState state,
    String sentence,
    Optional<Greeting> greeting,
    Optional<PortReport> ports) {
  public LinkChange(long hostNanos, LinkState state, String sentence, Optional<Greeting> greeting) {
    this(hostNanos, state, sentence, greeting, Optional.empty());
  }
}
