package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;

/** Gathers light blocks of the centre sensor while a disc turns before it. */
final class DiscLightTask implements RigTask {
  /** A turn of the slowest disc of use, twice. Edges go first, so many are skipped. */
  private static final int BLOCKS = 1000;

  /** Blocks may be skipped, the last one too: after this without one, those that came must do. */
  private static final long QUIET_TICKS = 8_000_000;

  private final List<RigMessage.LightBlock> blocks = new ArrayList<>();
  private long quietSinceTicks = -1;

  @Override
  public RigCommand begin() {
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, BLOCKS);
  }

  @Override
  public State onEvent(RigEvent event) {
    if (event instanceof RigEvent.Light light && light.block().channel() == Channel.CENTRE_LOW) {
      blocks.add(light.block());
      quietSinceTicks = -1;
      return light.block().index() + 1 >= BLOCKS ? State.DONE : State.UNDER_WAY;
    }
    if (event instanceof RigEvent.TimeAt time && !blocks.isEmpty()) {
      quietSinceTicks = quietSinceTicks < 0 ? time.ticks() : quietSinceTicks;
      return time.ticks() - quietSinceTicks > QUIET_TICKS ? State.DONE : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  List<RigMessage.LightBlock> blocks() {
    return List.copyOf(blocks);
  }
}
