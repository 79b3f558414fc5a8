package org.halflight.bench;

import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;

/** Pings with every beat for a while, so that the clocks can be held against each other. */
final class PingTask extends TimedTask {
  private long beat;
  private long pinged;
  private int token;

  PingTask(double seconds, DoubleConsumer share) {
    super(seconds, share);
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.Ping(token++);
  }

  @Override
  void onEvent(RigEvent event) {
    if (event instanceof RigEvent.TimeAt time) {
      beat = time.ticks() >> 22;
    }
  }

  @Override
  public Optional<RigCommand> next() {
    // One ping for each beat that was heard.
    if (beat == pinged) {
      return Optional.empty();
    }
    pinged = beat;
    token = (token + 1) & 0xFFFF;
    return Optional.of(new RigCommand.Ping(token));
  }
}
