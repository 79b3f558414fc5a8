package org.halflight.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.session.LightReading;
import org.halflight.signal.Channel;

/**
 * Reads the light of the centre sensor over a second in which nothing moves: waits until the light
 * stands still, and gives up where it does not.
 *
 * <p>A state machine that is told what the rig says and answers with the next command; it knows no
 * port and no clock. Not safe for use by several threads.
 */
public final class LightProbe {
  /** Blocks of one millisecond: whole cycles of 100 and of 120 Hz. */
  public static final int BLOCKS = 1000;

  /**
   * What one step of the converter leaves open, in counts: a rectangle of one count has a standard
   * deviation of 1 over the root of 12 (JCGM 100, 4.3.7). Noise of the light makes it less, which
   * is not counted on.
   */
  public static final double STEP_COUNTS = 1 / Math.sqrt(12);

  /** The light may wander by this share of itself within the second. Our choice. */
  static final double STILL_SHARE = 0.005;

  /** And by this always: one count of the converter. */
  static final double STILL_COUNTS = 1;

  /** Seconds that the light gets to come to rest. */
  private static final int TRIES = 6;

  /** Whole cycles of mains light. */
  private static final int STRETCH_BLOCKS = 100;

  /** Beats without a light block after which the rig has no more to say. */
  private static final int PATIENCE_BEATS = 8;

  /** Where it stands. */
  public enum Step {
    READING,
    DONE,
    /** The light did not come to rest. */
    NOT_STILL,
    /** The rig sent no light. */
    NO_ANSWER
  }

  private final LightReading.What what;
  private final String at;
  private final boolean opening;
  private final List<RigMessage.LightBlock> blocks = new ArrayList<>();
  private Step step = Step.READING;
  private int tries;
  private int beatsWithoutNews;
  private long ticks;
  private Optional<LightReading> reading = Optional.empty();

  /**
   * @param what stands how
   * @param at the f-number as engraved; empty where it does not matter
   * @param opening whether the stop was turned towards the wider ones to get there
   */
  public LightProbe(LightReading.What what, String at, boolean opening) {
    this.what = what;
    this.at = at;
    this.opening = opening;
  }

  /** Begins: the command to send first. */
  public RigCommand begin() {
    blocks.clear();
    beatsWithoutNews = 0;
    tries++;
    return new RigCommand.MeasureLight(Channel.CENTRE_LOW, BLOCKS);
  }

  /** Hears what the rig says; gives the command to send because of it, if any. */
  public Optional<RigCommand> onEvent(RigEvent event) {
    if (step != Step.READING) {
      return Optional.empty();
    }
    if (event instanceof RigMessage.LightBlock light && light.channel() == Channel.CENTRE_LOW) {
      beatsWithoutNews = 0;
      blocks.add(light);
      return light.index() + 1 >= BLOCKS ? judge() : Optional.empty();
    }
    if (event instanceof RigEvent.TimeAt time) {
      ticks = time.ticks();
      beatsWithoutNews++;
      if (beatsWithoutNews >= PATIENCE_BEATS) {
        // The last block may have been skipped: those that came must do.
        if (blocks.size() >= BLOCKS / 2) {
          return judge();
        }
        step = Step.NO_ANSWER;
      }
    }
    if (event instanceof RigEvent.Restarted) {
      // What it had begun is gone; its greeting says when it listens again.
      blocks.clear();
      beatsWithoutNews = 0;
    }
    if (event instanceof RigMessage.Greeting) {
      tries--;
      return Optional.of(begin());
    }
    return Optional.empty();
  }

  /** The rig is gone. */
  void lost() {
    step = step == Step.READING ? Step.NO_ANSWER : step;
  }

  private Optional<RigCommand> judge() {
    double[] stretches = stretches();
    double mean = blocks.stream().mapToInt(RigMessage.LightBlock::sum16).average().orElse(0) / 16;
    double least = Double.MAX_VALUE;
    double most = 0;
    double squares = 0;
    for (double each : stretches) {
      least = Math.min(least, each);
      most = Math.max(most, each);
      squares += (each - mean) * (each - mean);
    }
    if (stretches.length < 2 || most - least > Math.max(STILL_COUNTS, STILL_SHARE * mean)) {
      if (tries < TRIES) {
        return Optional.of(begin());
      }
      step = Step.NOT_STILL;
      return Optional.empty();
    }
    double scatter = Math.sqrt(squares / (stretches.length - 1) / stretches.length);
    reading =
        Optional.of(
            LightReading.of(
                what, at, opening, mean, Math.hypot(scatter, STEP_COUNTS), blocks.size(), ticks));
    step = Step.DONE;
    return Optional.empty();
  }

  /** Means of the whole stretches of 100 ms, in counts. */
  private double[] stretches() {
    double[] sums = new double[BLOCKS / STRETCH_BLOCKS];
    int[] counts = new int[sums.length];
    for (RigMessage.LightBlock block : blocks) {
      int stretch = Math.min(sums.length - 1, block.index() / STRETCH_BLOCKS);
      sums[stretch] += block.sum16() / 16.0;
      counts[stretch]++;
    }
    List<Double> means = new ArrayList<>();
    for (int i = 0; i < sums.length; i++) {
      if (counts[i] >= STRETCH_BLOCKS / 2) {
        means.add(sums[i] / counts[i]);
      }
    }
    return means.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Where it stands. */
  public Step step() {
    return step;
  }

  /** Part of the second that is read, 0 to 1. */
  public double progress() {
    return blocks.isEmpty() ? 0 : (blocks.get(blocks.size() - 1).index() + 1.0) / BLOCKS;
  }

  /** What was read, when done. */
  public Optional<LightReading> reading() {
    return reading;
  }
}
