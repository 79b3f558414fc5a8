package org.halflight.rig;

import org.halflight.rig.RigMessage.Greeting;
import org.halflight.words.Words;

/** What to call a rig in a sentence. */
final class RigNames {
  private static final String NO_SERIAL = "none";
  private static final String DAMAGED_SERIAL = "damaged";

  private RigNames() {}

  /** Whether a rig can be told from others by its serial number. */
  static boolean hasSerial(Greeting greeting) {
    return !greeting.serial().equals(NO_SERIAL) && !greeting.serial().equals(DAMAGED_SERIAL);
  }

  static String of(Greeting greeting) {
    return hasSerial(greeting)
        ? Words.say("rig.name", greeting.serial())
        : Words.say("rig.name.none");
  }
}
