package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.light.LightFlutter;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Measures the light of the centre sensor for some milliseconds. */
final class LightTask implements RigTask {
  private static final int BLOCKS = 100;

  /** The light of the LED has settled long before this many. */
  private static final int SETTLE_BLOCKS = 5;

  /** Blocks may be skipped, the last one too: after this without one, those that came must do. */
  private static final double QUIET_SECONDS = 0.3;

  private final Optional<RigCommand> ahead;
  private final int settle;
  private final List<Integer> sums = new ArrayList<>();
  private int least = Integer.MAX_VALUE;
  private int most;
  private long quietSinceTicks = -1;

  /** The light as it is. */
  LightTask() {
    this(Optional.empty(), 0);
  }

  private LightTask(Optional<RigCommand> ahead, int settle) {
    this.ahead = ahead;
    this.settle = settle;
  }

  /** The light with the LED on, which is switched on just before: it goes out after 10 s. */
  static LightTask ofTheLed() {
    return new LightTask(Optional.of(RigCommand.DriveReference.steady()), SETTLE_BLOCKS);
  }

  @Override
  public Optional<RigCommand> ahead() {
    return ahead;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, settle + BLOCKS);
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigMessage.LightBlock light && light.channel() == Channel.CENTRE_LOW) {
      if (light.index() >= settle) {
        sums.add(light.sum16());
        least = Math.min(least, light.least());
        most = Math.max(most, light.most());
      }
      quietSinceTicks = -1;
      return light.index() + 1 >= settle + BLOCKS ? State.DONE : State.UNDER_WAY;
    }
    if (event instanceof RigEvent.TimeAt time && !sums.isEmpty()) {
      quietSinceTicks = quietSinceTicks < 0 ? time.ticks() : quietSinceTicks;
      return rate.seconds(time.ticks() - quietSinceTicks) > QUIET_SECONDS
          ? State.DONE
          : State.UNDER_WAY;
    }
    return State.UNDER_WAY;
  }

  /** The least reading, in counts. */
  int least() {
    return least;
  }

  /** The greatest reading, in counts. */
  int most() {
    return most;
  }

  /** By what the light moves. */
  LightFlutter flutter() {
    return LightFlutter.of(sums.stream().mapToInt(Integer::intValue).toArray());
  }

  /** Mean light in counts of the ten-bit converter. */
  double counts() {
    return sums.stream().mapToInt(Integer::intValue).average().orElseThrow() / 16;
  }
}
