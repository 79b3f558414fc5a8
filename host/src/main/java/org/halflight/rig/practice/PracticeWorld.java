package org.halflight.rig.practice;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.halflight.shuttermodel.CurveSampler;
import org.halflight.shuttermodel.EdgeStamps;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.LightPaths;
import org.halflight.shuttermodel.SeededDraws;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;
import org.jspecify.annotations.Nullable;

/**
 * Virtual time, the light, and the board when it has power. Its clock goes on by what is planned,
 * never by itself. Not safe for use by several threads: {@link PracticeRig} holds the lock.
 */
final class PracticeWorld {
  private final Pace pace;
  private BoardTraits traits;
  private SensorSet sensors;
  private final Schedule schedule = new Schedule();
  private final LightTimeline light = new LightTimeline();
  private final Set<Channel> inputs = EnumSet.noneOf(Channel.class);
  private final PracticeWiring wiring = new PracticeWiring();
  private final LightMeter meter;
  private final SeededDraws edgeDraws;
  private final SeededDraws curveDraws;
  private final EdgeStamps stamps;
  private @Nullable PracticeBoard board;
  private String serial = "PRACTICE";
  private long bootCount;
  private long now;

  /** Unpaced: time may go on to here. */
  private long horizon;

  /** Everything asked for from outside begins here or later. */
  private long cursor;

  PracticeWorld(Pace pace, BoardTraits.Kind kind, SensorSet sensors, long seed, long startsBefore) {
    bootCount = startsBefore;
    traits = traits(kind);
    this.pace = pace;
    this.sensors = sensors;
    meter = new LightMeter(sensors, light, wiring, new SeededDraws(SeededDraws.seedOf(seed, 1)));
    edgeDraws = new SeededDraws(SeededDraws.seedOf(seed, 2));
    curveDraws = new SeededDraws(SeededDraws.seedOf(seed, 3));
    stamps = new EdgeStamps(TickRate.BOARD_16_MHZ, edgeDraws);
    startBoard();
  }

  /**
   * Ticks since the world began. Unpaced, how far it is depends on how much was read; nothing that
   * is asked for from outside may depend on that, so that a session with threads is the same each
   * time: see {@link #start}.
   */
  long now() {
    return now;
  }

  /** The time of the clock at ticks of the world. */
  long nanosAt(long ticks) {
    if (pace instanceof Pace.Paced paced) {
      return paced.startNanos() + ticks / 16 * 1000 + ticks % 16 * 1000 / 16;
    }
    throw new IllegalStateException("virtual time alone has no clock");
  }

  private static BoardTraits traits(BoardTraits.Kind kind) {
    return new BoardTraits(TickRate.BOARD_16_MHZ, kind, true);
  }

  /** Another kind of rig stands in the same light; its board starts as that kind. */
  void rewire(BoardTraits.Kind kind, SensorSet others) {
    traits = traits(kind);
    sensors = others.under(sensors.centre().lamp());
    meter.sensors(sensors);
  }

  /** What kind of board it is. */
  BoardTraits traits() {
    return traits;
  }

  boolean isPaced() {
    return pace instanceof Pace.Paced;
  }

  /** Whether a time of the world lies before one of the board's counter; so without a board. */
  boolean isSeen(long ticks, long boardTicks) {
    return board == null || boardTicks >= ticks - board.startTicks();
  }

  /** Another lamp shines from now on. */
  void lamp(Lamp lamp) {
    sensors(sensors.under(lamp));
  }

  /** Other sensors see the light from now on. */
  void sensors(SensorSet others) {
    sensors = others;
    meter.sensors(others);
  }

  /** The sensors and the lamp. */
  SensorSet sensors() {
    return sensors;
  }

  PracticeWiring wiring() {
    return wiring;
  }

  void wire(WiringFault fault) {
    wiring.is(fault);
    if (board != null) {
      board.thresholds().fixLow(fault == WiringFault.LOW_THRESHOLD_FIXED);
    }
  }

  /** A finger comes on a sensor at a time, or goes away. */
  void cover(Channel sensor, boolean on, long ticks) {
    reach(ticks);
    later(
        ticks,
        () -> {
          wiring.cover(sensor, on);
          if (board != null) {
            board.compareAll();
          }
        });
  }

  LightTimeline light() {
    return light;
  }

  /** The board, or null while it has no power. */
  @Nullable PracticeBoard board() {
    return board;
  }

  /** Ticks of the world at which the board last started. */
  long boardStartTicks() {
    return board == null ? 0 : board.startTicks();
  }

  String serial() {
    return serial;
  }

  void serial(String newSerial) {
    serial = newSerial;
  }

  /** The inputs that are high now and are no light. */
  Set<Channel> inputs() {
    return inputs;
  }

  void startBoard() {
    while (!isPaced() && schedule.nextTicks() <= cursor) {
      runNext();
    }
    now = Math.max(now, isPaced() ? now : cursor);
    bootCount++;
    board = new PracticeBoard(this, now, bootCount, meter);
    if (!isPaced()) {
      occupy(now + PracticeBoard.BEAT_TICKS);
    }
  }

  void stopBoard() {
    board = null;
  }

  void stopBoardIn(double seconds) {
    long ticks = start() + TickRate.BOARD_16_MHZ.ticks(seconds);
    @Nullable PracticeBoard stopped = board;
    reach(ticks);
    later(
        ticks,
        () -> {
          if (board == stopped) {
            stopBoard();
          }
        });
  }

  void later(long ticks, Runnable action) {
    schedule.at(Math.max(now, ticks), action);
  }

  /** Time may go on to there when nothing else sets its pace. */
  void reach(long ticks) {
    horizon = Math.max(horizon, ticks);
  }

  /** When the next thing begins that is asked for now: after all that was asked for before. */
  long start() {
    return Math.max(now, cursor);
  }

  /** How much later than now that is. */
  long nanosAhead() {
    return (start() - now) / 16 * 1000;
  }

  /** What is asked for later begins after this time. */
  void occupy(long ticks) {
    cursor = Math.max(cursor, ticks);
    reach(ticks);
  }

  /** Light that comes to the sensors from a time on, and what the board sees of it. */
  void shine(long startTicks, LightPaths paths) {
    shine(startTicks, paths, true);
  }

  /** The same light at all sensors. */
  void shine(long startTicks, LightPath path) {
    shine(startTicks, LightPaths.same(path));
  }

  /** The same for light that the converter does not follow: it never stays dark for long enough. */
  void shineOnAndOn(long startTicks, LightPath path) {
    shine(startTicks, LightPaths.same(path), false);
  }

  private void shine(long startTicks, LightPaths paths, boolean hasCurve) {
    light.add(startTicks, paths);
    later(
        startTicks,
        () -> {
          // A board that gets its power back meanwhile sees the rest at the levels it starts with.
          List<Edge> edges =
              sensors.edges(
                  paths,
                  startTicks,
                  board == null ? Thresholds.startLowMillivolts() : board.lowMillivolts(),
                  board == null ? Thresholds.startHighMillivolts() : board.highMillivolts(),
                  edgeDraws);
          edges.forEach(edge -> later(edge.ticks(), () -> edge(edge)));
          PracticeBoard watching = board;
          if (hasCurve && watching != null && watching.recordsCurve()) {
            curve(watching, paths, startTicks).ifPresent(watching::reportCurve);
          }
        });
  }

  /**
   * The sampled light of an opening. One that is held open by hand has none here: a rig cuts it off
   * some time, and nobody measures by it.
   */
  private Optional<SampledLight> curve(PracticeBoard watching, LightPaths paths, long startTicks) {
    Channel watched = watching.watchedSensor();
    LightPath path = paths.of(watched);
    double lampSeconds = TickRate.BOARD_16_MHZ.seconds(startTicks);
    double trigger = watching.lowMillivolts() / (traits.fixedLevel() ? 2 : 1);
    FrontEnd sensor = sensors.of(watched);
    boolean whole =
        path.open()[0] == 0
            && path.endOpen() == 0
            && !sensor.crossings(path, lampSeconds, trigger).isEmpty();
    if (!whole) {
      return Optional.empty();
    }
    SampledLight light =
        watching.recordsLongCurve()
            ? CurveSampler.INVENTED.sampleLong(sensor, path, startTicks, trigger, curveDraws)
            : CurveSampler.INVENTED.sample(sensor, path, startTicks, trigger, curveDraws);
    return Optional.of(new SampledLight(watched, light.parts(), light.cutOff()));
  }

  /** The board's stamp of a change now. */
  long stamp(Channel channel, long ticks) {
    return stamps.stamp(channel, ticks, 0);
  }

  /** A sensor passes its threshold now; nobody sees it while the board has no power. */
  void edge(Edge edge) {
    if (board != null) {
      board.edge(edge.channel(), edge.high(), edge.ticks());
    }
  }

  /** A switch or a sound changes at a time; the board stamps it if it has power then. */
  void input(Channel channel, boolean toHigh, long ticks) {
    reach(ticks);
    later(
        ticks,
        () -> {
          if (toHigh) {
            inputs.add(channel);
          } else {
            inputs.remove(channel);
          }
          if (board != null) {
            board.edge(channel, toHigh, stamp(channel, ticks));
          }
        });
  }

  /** Lets everything happen that is due by the pace's own clock. */
  void catchUp() {
    if (isPaced()) {
      while (schedule.nextTicks() <= target()) {
        runNext();
      }
      now = Math.max(now, target());
    }
  }

  /** Goes on to the next line that the board has sent, as far as time may go; null for none. */
  byte @Nullable [] nextLine() {
    while (board != null) {
      long limit = target();
      long line = board.sender().nextReadyTicks();
      long next = schedule.nextTicks();
      // Unpaced, what was sent can be read to its end without time going on for it.
      boolean out = line <= limit || (!isPaced() && line < Long.MAX_VALUE && next > limit);
      if (out && line <= next) {
        now = Math.max(now, Math.min(line, limit));
        return board.sender().nextLine();
      }
      if (next > limit) {
        now = Math.max(now, limit);
        return null;
      }
      runNext();
    }
    return null;
  }

  /** Nanoseconds until something may happen by itself; the greatest long when never. */
  long nanosToNext() {
    if (!isPaced() || board == null) {
      return Long.MAX_VALUE;
    }
    long next = Math.min(schedule.nextTicks(), board.sender().nextReadyTicks());
    return Math.max(0, next - target()) / 16 * 1000 + 1000;
  }

  private long target() {
    return pace instanceof Pace.Paced paced ? paced.ticks() : horizon;
  }

  private void runNext() {
    now = Math.max(now, schedule.nextTicks());
    schedule.runNext();
    light.forgetBefore(now - 4L * LightMeter.TICKS_PER_BLOCK);
  }
}
