package org.halflight.rig.practice;

import org.halflight.rig.RigCommand.CurveMode;
import org.halflight.rig.RigCommand.MeasureLight;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;

/** What the one converter of the board is at: light curves, light blocks, or thresholds. */
final class ConverterWork {
  static final long THRESHOLD_READING_TICKS = 8 * LightMeter.TICKS_PER_BLOCK;

  private final BoardLife life;
  private final LightMeter meter;
  private final Thresholds thresholds;
  private final Sender sender;
  private CurveMode curveMode = CurveMode.ON;
  private int curves;
  private int request;
  private int blocksToCome;
  private boolean readingThresholds;

  ConverterWork(BoardLife life, LightMeter meter, Thresholds thresholds, Sender sender) {
    this.life = life;
    this.meter = meter;
    this.thresholds = thresholds;
    this.sender = sender;
  }

  /** Whether nothing but light curves is asked of it. */
  boolean isFree() {
    return blocksToCome == 0 && !readingThresholds;
  }

  void curves(CurveMode mode) {
    curveMode = mode;
  }

  boolean recordsCurves() {
    return curveMode != CurveMode.OFF;
  }

  /** Whether the next curve is a long one. */
  boolean recordsLongCurve() {
    return curveMode == CurveMode.NEXT_ONE_LONG;
  }

  /** The sensor whose curve is next. */
  Channel watchedSensor() {
    return switch (curveMode) {
      case NEXT_OF_OUTER_A -> Channel.OUTER_A;
      case NEXT_OF_OUTER_B -> Channel.OUTER_B;
      case OFF, ON, NEXT_ONE_LONG -> Channel.CENTRE_LOW;
    };
  }

  /** The light of an opening, sampled; reported once it is over, behind all edges. */
  void reportCurve(SampledLight light) {
    if ((light.isLong() && recordsLongCurve()) || !light.isOfCentre()) {
      curveMode = CurveMode.ON;
    }
    life.later(
        light.endTicks(),
        () -> {
          sender.sendCurve(CurveLines.of(light, curves & 0xFF, life.startTicks()));
          curves++;
        });
  }

  void readThresholds(int commandSequence) {
    if (blocksToCome > 0) {
      sender.answer(commandSequence, Result.BUSY);
      return;
    }
    long until = life.now() + THRESHOLD_READING_TICKS;
    life.world().reach(until);
    readingThresholds = true;
    life.later(
        until,
        () -> {
          readingThresholds = false;
          int lowSum = meter.thresholdSum(thresholds.lowMillivolts(life.now()));
          int highSum = meter.thresholdSum(thresholds.highMillivolts(life.now()));
          sender.send(
              at ->
                  new RigMessage.Thresholds(
                      at, thresholds.lowCode(), thresholds.highCode(), lowSum, highSum));
          sender.answer(commandSequence, Result.DONE);
        });
  }

  /** A new request takes the place of one under way. */
  void measure(MeasureLight measure) {
    request++;
    sender.forgetBlocks();
    blocksToCome = measure.blocks();
    if (blocksToCome == 0) {
      return;
    }
    long first =
        life.startTicks()
            + (life.age() / LightMeter.TICKS_PER_BLOCK + 1) * LightMeter.TICKS_PER_BLOCK;
    life.world()
        .reach(first + (long) blocksToCome * LightMeter.TICKS_PER_BLOCK + Sender.BLOCKS_TICKS_MOST);
    planBlock(measure.channel(), 0, first, request);
  }

  private void planBlock(Channel channel, int index, long from, int itsRequest) {
    life.later(
        from + LightMeter.TICKS_PER_BLOCK,
        () -> {
          if (itsRequest != request) {
            return;
          }
          LightMeter.Block block = meter.block(channel, from);
          sender.sendBlock(
              at ->
                  new RigMessage.LightBlock(
                      at, channel, index, block.sum(), block.least(), block.most()));
          blocksToCome--;
          if (blocksToCome > 0) {
            planBlock(channel, index + 1, from + LightMeter.TICKS_PER_BLOCK, itsRequest);
          }
        });
  }
}
