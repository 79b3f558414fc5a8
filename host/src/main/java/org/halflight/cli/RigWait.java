package org.halflight.cli;

import org.halflight.bench.RigWork;

/** Waits for a rig outside of a session, and shows what happens to the link. */
final class RigWait {
  private RigWait() {}

  /**
   * Waits until the rig has greeted.
   *
   * @return whether it did; false when the person gave up with {@code q} or Ctrl-C
   */
  static boolean forGreeting(RigWork work, Terminal terminal) {
    while (work.greeting().isEmpty()) {
      work.step();
      work.changes().forEach(change -> terminal.say(change.sentence()));
      if (work.isStopped()) {
        return false;
      }
    }
    return true;
  }
}
