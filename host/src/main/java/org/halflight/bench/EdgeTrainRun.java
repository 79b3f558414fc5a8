package org.halflight.bench;

import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.LongStream;
import org.halflight.calibration.EdgeTrain;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.time.TickRate;

/**
 * Measures the rate of a rig's clock by edges of known frequency on one of its inputs: an outside
 * reference, which neither the rig's LED nor this computer's clock is.
 */
public final class EdgeTrainRun {
  /** Light that moves less than this within 0.1 s has no edges there to place a threshold for. */
  private static final int SWING_LEAST_COUNTS = 20;

  /** Counts of the converter in a threshold code. */
  private static final int COUNTS_PER_CODE = 4;

  /** What came of it. */
  public sealed interface Outcome {}

  /**
   * What the edges said.
   *
   * @param found a rate, too few edges, or another frequency
   * @param edges how many came
   */
  public record Heard(EdgeTrain.Outcome found, int edges) implements Outcome {}

  /** Nothing, and why. */
  public record Refused(CalibrationRefusal refusal) implements Outcome {}

  private final RigWork work;
  private final EdgeTrain train;
  private final Channel channel;

  /**
   * @param work a rig that has greeted
   * @param train what makes the edges
   * @param channel the input that they come on
   */
  public EdgeTrainRun(RigWork work, EdgeTrain train, Channel channel) {
    this.work = work;
    this.train = train;
    this.channel = channel;
  }

  /**
   * Listens for a while.
   *
   * @param share hears what part of it is over, 0 to 1
   */
  public Outcome run(double seconds, DoubleConsumer share) {
    try {
      TaskRunner runner = new TaskRunner(work);
      if (channel == Channel.CENTRE_LOW) {
        placeThreshold(runner);
      }
      TickRate rate = work.rate();
      EdgesTask task =
          runner.run(
              new EdgesTask(edge -> edge.channel() == channel && edge.high(), seconds, share));
      long[] rises = withoutChatter(task.edges(), rate.ticks(0.5 / train.hertz()));
      return new Heard(train.rate(rises, rate), rises.length);
    } catch (CalibrationRefused refused) {
      work.leaveInOrder();
      return new Refused(refused.refusal());
    }
  }

  /**
   * Ticks of the edges.
   *
   * @param leastTicks an edge sooner than this behind the one before is chatter of that one
   */
  private static long[] withoutChatter(List<Edge> edges, long leastTicks) {
    LongStream.Builder kept = LongStream.builder();
    long last = -leastTicks;
    for (Edge edge : edges) {
      if (edge.ticks() - last >= leastTicks) {
        last = edge.ticks();
        kept.add(last);
      }
    }
    return kept.build().toArray();
  }

  /** A lamp on the mains crosses the middle of its own swing; slower light is left as it is. */
  private static void placeThreshold(TaskRunner runner) throws CalibrationRefused {
    LightTask light = runner.run(LightTask.asItIs());
    if (light.most() - light.least() < SWING_LEAST_COUNTS) {
      return;
    }
    int code = (light.least() + light.most()) / 2 / COUNTS_PER_CODE - 1;
    int low = Math.max(1, Math.min(254, code));
    runner.run(new ThresholdTask(low, low + 1));
  }
}
