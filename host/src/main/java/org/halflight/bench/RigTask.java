package org.halflight.bench;

import java.util.Optional;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/** One thing that a rig is asked to do, and what it says about it until it is done. */
interface RigTask {
  /** How a task stands. */
  enum State {
    UNDER_WAY,
    DONE
  }

  /** The command that begins it. */
  RigCommand begin();

  /**
   * A command that goes before each of the task's own without waiting for its answer, which the
   * task does not hear: what it does lasts on the rig only for a while.
   */
  default Optional<RigCommand> ahead() {
    return Optional.empty();
  }

  /**
   * Hears what the rig says.
   *
   * @param rate how fast it counts
   */
  State onEvent(RigEvent event, TickRate rate);

  /** A further command on the way; asked for after each event. */
  default Optional<RigCommand> next() {
    return Optional.empty();
  }

  /** Seconds of rig time after which the rig has no more to say. */
  default double patienceSeconds(TickRate rate) {
    return 4;
  }
}
