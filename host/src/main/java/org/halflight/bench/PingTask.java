package org.halflight.bench;

import java.util.Optional;
import java.util.function.DoubleConsumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.time.TickRate;

/** Pings with every beat for a while, so that the clocks can be held against each other. */
final class PingTask implements RigTask {
  private final double seconds;
  private final DoubleConsumer share;
  private long firstTicks = -1;
  private long ticks;
  private int token;
  private int sent;

  PingTask(double seconds, DoubleConsumer share) {
    this.share = share;
    this.seconds = seconds;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.Ping(token++);
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigEvent.TimeAt time) {
      firstTicks = firstTicks < 0 ? time.ticks() : firstTicks;
      ticks = time.ticks();
      share.accept(Math.min(1, rate.seconds(ticks - firstTicks) / seconds));
    }
    return rate.seconds(ticks - Math.max(0, firstTicks)) >= seconds ? State.DONE : State.UNDER_WAY;
  }

  @Override
  public Optional<RigCommand> next() {
    // One ping for each beat that was heard.
    if (ticks == 0 || sent == (int) (ticks >> 22)) {
      return Optional.empty();
    }
    sent = (int) (ticks >> 22);
    token = (token + 1) & 0xFFFF;
    return Optional.of(new RigCommand.Ping(token));
  }

  @Override
  public double patienceSeconds(TickRate rate) {
    return 4 + 1.5 * seconds;
  }
}
