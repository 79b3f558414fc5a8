package org.halflight.bench;

import java.util.Optional;
import org.halflight.profile.ComparatorTrips;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Finds where a comparator switches, by the steady light of the reference LED. */
final class SweepTask implements RigTask {
  /** The longest sweep and its answer: 6.5 s, and a near one before. */
  private static final double PATIENCE_SECONDS = 9;

  private final ComparatorSweep sweep;
  private Optional<RigCommand> next = Optional.empty();
  private boolean again;

  SweepTask(Channel channel, ReferenceLight light) {
    sweep = new ComparatorSweep(channel, light.ledCounts(), light.flutter());
  }

  @Override
  public RigCommand begin() {
    return sweep.command();
  }

  @Override
  public Optional<RigCommand> ahead() {
    // The LED goes out by itself after 10 s.
    return Optional.of(RigCommand.DriveReference.steady());
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    sweep.onEvent(event);
    if (!(event instanceof RigMessage.Answer)) {
      return State.UNDER_WAY;
    }
    if (!sweep.isHeard()) {
      // Its answers did not come through: once more, and then the patience ends.
      next = again ? Optional.empty() : Optional.of(sweep.command());
      again = true;
      return State.UNDER_WAY;
    }
    if (sweep.trips().isEmpty() && sweep.canReachFarther()) {
      next = Optional.of(sweep.farther());
      return State.UNDER_WAY;
    }
    return State.DONE;
  }

  @Override
  public Optional<RigCommand> next() {
    Optional<RigCommand> now = next;
    next = Optional.empty();
    return now;
  }

  @Override
  public double patienceSeconds(TickRate rate) {
    return PATIENCE_SECONDS;
  }

  /** Where the comparator switches; empty where it did not switch both ways. */
  Optional<ComparatorTrips> trips() {
    return sweep.trips();
  }
}
