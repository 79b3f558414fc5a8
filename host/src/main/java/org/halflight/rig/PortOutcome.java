package org.halflight.rig;

import java.util.Optional;
import org.halflight.link.PortCandidate;
import org.halflight.rig.RigMessage.Greeting;

/**
 * What was found on one port.
 *
 * @param candidate the port
 * @param finding what it was
 * @param sentence the same for the person, with what to do
 * @param greeting what a rig said of itself, also one that this program cannot read
 */
public record PortOutcome(
    PortCandidate candidate, Finding finding, String sentence, Optional<Greeting> greeting) {
  PortOutcome(PortCandidate candidate, Finding finding, String sentence) {
    this(candidate, finding, sentence, Optional.empty());
  }

  /** What a port can turn out to be. */
  public enum Finding {
    /** A rig. */
    RIG,
    /** A rig of a line protocol that this program does not speak. */
    OTHER_PROTOCOL,
    /** Nothing was heard at any speed. */
    SILENT,
    /** Something speaks, but not as a rig does. */
    NO_RIG,
    /** The person may not use the port. */
    NO_PERMISSION,
    /** Another program has the port. */
    BUSY,
    /** The port could not be opened, or went away while it was asked. */
    UNUSABLE
  }

  /** What the person calls the rig; empty where none answered. */
  public Optional<String> name() {
    return greeting.map(RigNames::of);
  }

  /**
   * Whether the board behind the port was reached, and asking again would restart it for nothing.
   */
  boolean isSettled() {
    return switch (finding) {
      case RIG, OTHER_PROTOCOL, SILENT, NO_RIG -> true;
      case NO_PERMISSION, BUSY, UNUSABLE -> false;
    };
  }
}
