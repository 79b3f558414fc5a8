package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Gathers light blocks of the centre sensor while a disc turns before it. */
final class DiscLightTask implements RigTask {
  /** A turn of the slowest disc of use, twice. Edges go first, so many are skipped. */
  private static final int BLOCKS = 1000;

  /** Blocks may be skipped, the last one too: after this without one, those that came must do. */
  private static final double QUIET_SECONDS = 0.5;

  private final List<RigMessage.LightBlock> blocks = new ArrayList<>();
  private final DoubleConsumer share;
  private long quietSinceTicks = -1;

  /**
   * @param share hears what part of it is over, 0 to 1
   */
  DiscLightTask(DoubleConsumer share) {
    this.share = share;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, BLOCKS);
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigMessage.LightBlock light && light.channel() == Channel.CENTRE_LOW) {
      blocks.add(light);
      quietSinceTicks = -1;
      share.accept((light.index() + 1.0) / BLOCKS);
      return light.index() + 1 >= BLOCKS ? State.DONE : State.UNDER_WAY;
    }
    if (event instanceof RigEvent.TimeAt time && !blocks.isEmpty()) {
      quietSinceTicks = quietSinceTicks < 0 ? time.ticks() : quietSinceTicks;
      return rate.seconds(time.ticks() - quietSinceTicks) > QUIET_SECONDS
          ? State.DONE
          : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  List<RigMessage.LightBlock> blocks() {
    return List.copyOf(blocks);
  }
}
