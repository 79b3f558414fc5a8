package org.halflight.session;

import java.util.List;
import org.halflight.signal.Channel;

/** Sees to it that the caution about the flash contact is given once, before it is used. */
final class ContactCaution {
  private boolean given;

  /** A run begins; with the contact wired the caution comes before its first firing. */
  void runBegins(RunSetup setup, List<SessionEvent> events) {
    if (setup.criteria().flashContact()) {
      give(events);
    }
  }

  /**
   * A firing settled; a contact that nobody spoke of may be wired too. The practice rig's is not.
   */
  void settled(FiringResult result, List<SessionEvent> events) {
    if (Source.of(result.key().rigSerial()) != Source.PRACTICE
        && !result.firing().of(Channel.CONTACT).isEmpty()) {
      give(events);
    }
  }

  private void give(List<SessionEvent> events) {
    if (!given) {
      given = true;
      events.add(new SessionEvent.FlashContactInUse());
    }
  }
}
