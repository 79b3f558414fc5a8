package org.halflight.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.light.Aim;
import org.halflight.light.AimTrail;
import org.halflight.light.FlickerJudge;
import org.halflight.light.LightBlock;
import org.halflight.light.MeterReading;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigMessage;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;

/**
 * The light meter: asks each sensor in turn for a few light blocks, which any rig of the protocol
 * can send, and so reads all of them ten times a second or more. While the light stands still it
 * asks the centre for a longer stretch now and then, by which the lamp is judged. Whatever else
 * brings light of the centre moves the needle too: blocks that others ask for, and beats.
 *
 * <p>A state machine that is told what the rig says and answers with the next command; it knows no
 * port and no clock. Not safe for use by several threads.
 */
public final class AimMeter {
  /** Ends a request; blocks that come before its answer are of that request still. */
  static final RigCommand STOP = new RigCommand.MeasureLight(Channel.CENTRE_LOW, 0);

  /** Blocks of one round, for all sensors together: of three each has whole cycles of 100 Hz. */
  private static final int ROUND_BLOCKS = 30;

  /**
   * Blocks by which the lamp is judged: three stretches of {@link FlickerJudge}, the last one
   * hardly more than half. Nobody else asks for as many, so no answer is taken for another.
   */
  private static final int LAMP_BLOCKS = 260;

  /** A reading of blocks that come without end. */
  private static final int READING_BLOCKS = 10;

  /** Seconds from one look at the lamp to the next. */
  private static final double LAMP_EVERY_SECONDS = 3;

  /** Beats without a block after which the next request is made: edges go before blocks. */
  private static final int PATIENCE_BEATS = 2;

  private final List<Channel> sensors;
  private final TickRate rate;
  private final AimTrail trail = new AimTrail();
  private final List<LightBlock> gathered = new ArrayList<>();
  private final List<LightBlock> ofTheLamp = new ArrayList<>();
  private Optional<Channel> asked = Optional.empty();
  private int wanted;
  private int beatsWithoutBlocks;
  private double seconds;
  private double lampSeconds;
  private double darkSum16;
  private boolean looksAtTheLamp = true;
  private boolean restarted;
  private final Map<Channel, Long> readings = new EnumMap<>(Channel.class);
  private double lastCounts;
  private Aim aim = Aim.nothing();

  /**
   * @param board what the rig brings: a small rig has one sensor
   */
  public AimMeter(BoardTraits board) {
    sensors =
        board.oneLevel()
            ? List.of(Channel.CENTRE_LOW)
            : List.of(Channel.CENTRE_LOW, Channel.OUTER_A, Channel.OUTER_B);
    rate = board.rate();
  }

  /** Begins to ask, with the centre: the command to send first. */
  public RigCommand begin() {
    asked = Optional.empty();
    return next();
  }

  /** Asks no more; what comes still moves the needle. */
  public RigCommand end() {
    asked = Optional.empty();
    gathered.clear();
    ofTheLamp.clear();
    return STOP;
  }

  /** Hears what the rig says; gives the next command where it has asked for light, if any. */
  public Optional<RigCommand> onEvent(RigEvent event) {
    if (event instanceof RigMessage.LightBlock light) {
      beatsWithoutBlocks = 0;
      return block(light);
    }
    if (event instanceof RigEvent.TimeAt beat) {
      return beat(beat);
    }
    // What it had asked is gone with the start; the greeting says when the rig listens again.
    restarted |= event instanceof RigEvent.Restarted;
    if (event instanceof RigMessage.Greeting && restarted) {
      restarted = false;
      return asked.isPresent() ? Optional.of(begin()) : Optional.empty();
    }
    return Optional.empty();
  }

  private Optional<RigCommand> block(RigMessage.LightBlock light) {
    if (gathered.size() > 0 && light.index() <= gathered.get(gathered.size() - 1).index()) {
      gathered.clear();
    }
    gathered.add(new LightBlock(light.index(), light.sum16(), light.least(), light.most()));
    boolean isAsked = asked.filter(light.channel()::equals).isPresent();
    boolean isLast = isAsked && light.index() + 1 >= wanted;
    if (isAsked && wanted == LAMP_BLOCKS) {
      ofTheLamp.add(gathered.get(gathered.size() - 1));
    }
    if (isLast || ((!isAsked || wanted == LAMP_BLOCKS) && gathered.size() >= READING_BLOCKS)) {
      read(light.channel());
    }
    return isLast ? Optional.of(next()) : Optional.empty();
  }

  /** Hears the time; also before the rig has answered, when beats say nothing else. */
  void onTime(RigEvent.TimeAt beat) {
    seconds = rate.seconds(beat.ticks());
  }

  private Optional<RigCommand> beat(RigEvent.TimeAt beat) {
    onTime(beat);
    beatsWithoutBlocks++;
    if (asked.isPresent()) {
      return beatsWithoutBlocks >= PATIENCE_BEATS ? Optional.of(next()) : Optional.empty();
    }
    if (beatsWithoutBlocks >= PATIENCE_BEATS) {
      double counts = (double) beat.lightSum16() / LightBlock.READINGS;
      take(new MeterReading(Channel.CENTRE_LOW, seconds, counts, (int) Math.ceil(counts)));
    }
    return Optional.empty();
  }

  private void read(Channel sensor) {
    double counts = gathered.stream().mapToDouble(LightBlock::meanCounts).average().orElseThrow();
    int most = gathered.stream().mapToInt(LightBlock::most).max().orElseThrow();
    gathered.clear();
    take(new MeterReading(sensor, seconds, counts, most));
  }

  private void take(MeterReading reading) {
    trail.add(reading);
    readings.merge(reading.sensor(), 1L, Long::sum);
    if (reading.sensor() == Channel.CENTRE_LOW) {
      lastCounts = reading.counts();
    }
    aim = trail.aim();
  }

  /** How many readings there were of each sensor. */
  public Map<Channel, Long> readingsOf() {
    return Map.copyOf(readings);
  }

  /** The next request: the lamp, when its turn has come, or the next sensor. */
  private RigCommand next() {
    judgeLamp();
    gathered.clear();
    beatsWithoutBlocks = 0;
    int at = asked.map(sensors::indexOf).orElse(-1) + 1;
    Channel sensor = sensors.get(at % sensors.size());
    asked = Optional.of(sensor);
    boolean lamp =
        at % sensors.size() == 0
            && looksAtTheLamp
            && trail.isStill()
            && (seconds >= lampSeconds + LAMP_EVERY_SECONDS || aim.lamp().isEmpty());
    wanted = lamp ? LAMP_BLOCKS : ROUND_BLOCKS / sensors.size();
    return new RigCommand.MeasureLight(sensor, wanted);
  }

  private void judgeLamp() {
    if (!ofTheLamp.isEmpty()) {
      lampSeconds = seconds;
      trail.judged(FlickerJudge.judge(ofTheLamp, darkSum16));
      ofTheLamp.clear();
      aim = trail.aim();
    }
  }

  /** The light is set: what is dark here. */
  void dark(double counts) {
    darkSum16 = counts * LightBlock.READINGS;
  }

  /** Whether the lamp is judged now and then; not while a reading of each moment is wanted. */
  void looksAtTheLamp(boolean looks) {
    looksAtTheLamp = looks;
  }

  /** How the light is aimed now. */
  public Aim aim() {
    return aim;
  }

  /** How many readings of the centre there were. */
  public long readings() {
    return readings.getOrDefault(Channel.CENTRE_LOW, 0L);
  }

  /** The last reading of the centre, in counts. */
  public double counts() {
    return lastCounts;
  }
}
