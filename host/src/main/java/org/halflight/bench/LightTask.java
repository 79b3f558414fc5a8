package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.halflight.light.LightFlutter;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/** Measures the light of the centre sensor for some milliseconds. */
final class LightTask implements RigTask {
  private static final int BLOCKS = 100;

  /** A turn of the slowest disc of use, twice. Edges go first, so many are skipped. */
  private static final int BLOCKS_OF_A_DISC = 1000;

  /** The light of the LED has settled long before this many. */
  private static final int SETTLE_BLOCKS = 5;

  /** Blocks may be skipped, the last one too: after this without one, those that came must do. */
  private static final double QUIET_SECONDS = 0.3;

  /** Where edges go first, the next block may be long in coming. */
  private static final double QUIET_SECONDS_OF_A_DISC = 0.5;

  private final Optional<RigCommand> ahead;
  private final int settle;
  private final int count;
  private final double quietSeconds;
  private final DoubleConsumer share;
  private final List<RigMessage.LightBlock> blocks = new ArrayList<>();
  private final Elapsed quiet = new Elapsed();

  private LightTask(
      Optional<RigCommand> ahead,
      int settle,
      int count,
      double quietSeconds,
      DoubleConsumer share) {
    this.ahead = ahead;
    this.settle = settle;
    this.count = settle + count;
    this.quietSeconds = quietSeconds;
    this.share = share;
  }

  /** The light as it is. */
  static LightTask asItIs() {
    return new LightTask(Optional.empty(), 0, BLOCKS, QUIET_SECONDS, part -> {});
  }

  /** The light with the LED on, which is switched on just before: it goes out after 10 s. */
  static LightTask ofTheLed() {
    return new LightTask(
        Optional.of(RigCommand.DriveReference.steady()),
        SETTLE_BLOCKS,
        BLOCKS,
        QUIET_SECONDS,
        part -> {});
  }

  /**
   * The light while a disc turns before it.
   *
   * @param share hears what part of it is over, 0 to 1
   */
  static LightTask ofADisc(DoubleConsumer share) {
    return new LightTask(Optional.empty(), 0, BLOCKS_OF_A_DISC, QUIET_SECONDS_OF_A_DISC, share);
  }

  @Override
  public Optional<RigCommand> ahead() {
    return ahead;
  }

  @Override
  public RigCommand begin() {
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, count);
  }

  @Override
  public State onEvent(RigEvent event, TickRate rate) {
    if (event instanceof RigMessage.LightBlock light && light.channel() == Channel.CENTRE_LOW) {
      if (light.index() >= settle) {
        blocks.add(light);
      }
      quiet.restart();
      share.accept((light.index() + 1.0) / count);
      return light.index() + 1 >= count ? State.DONE : State.UNDER_WAY;
    }
    return event instanceof RigEvent.TimeAt beat
            && !blocks.isEmpty()
            && quiet.seconds(beat, rate) > quietSeconds
        ? State.DONE
        : State.UNDER_WAY;
  }

  /** What came, a millisecond a block. */
  List<RigMessage.LightBlock> blocks() {
    return List.copyOf(blocks);
  }

  /** The least reading, in counts. */
  int least() {
    return blocks.stream().mapToInt(RigMessage.LightBlock::least).min().orElseThrow();
  }

  /** The greatest reading, in counts. */
  int most() {
    return blocks.stream().mapToInt(RigMessage.LightBlock::most).max().orElseThrow();
  }

  /** By what the light moves. */
  LightFlutter flutter() {
    return LightFlutter.of(sums().toArray());
  }

  /** Mean light in counts of the ten-bit converter. */
  double counts() {
    return sums().average().orElseThrow() / 16;
  }

  private IntStream sums() {
    return blocks.stream().mapToInt(RigMessage.LightBlock::sum16);
  }
}
