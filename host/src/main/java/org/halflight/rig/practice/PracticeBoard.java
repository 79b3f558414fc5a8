package org.halflight.rig.practice;

import java.util.ArrayDeque;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.DoubleStream;
import org.halflight.rig.LineCodec;
import org.halflight.rig.LineReader;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.ReferenceDrive;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Result;
import org.halflight.shuttermodel.LevelComparator;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * One life of the practice board, from its start until its power goes: speaks the line protocol.
 * All times handed in are those of the world; the board counts its ticks from its own start.
 */
final class PracticeBoard {
  private static final String FIRMWARE = "practice-1";
  private static final int ALL_CHANNELS = 0x7F;
  private static final long TICKS_48 = (1L << 48) - 1;

  /** How long the board takes to its first line. */
  private static final long GREETING_TICKS = 0x12C0;

  static final long BEAT_TICKS = 1L << 22;

  /** From the last byte of a command to the first of its answer; invented. */
  private static final long THINKING_TICKS = 800;

  /** Unpaced, every command has this time to itself: what a threshold needs to settle. */
  private static final long COMMAND_TICKS = 100L * LightMeter.TICKS_PER_BLOCK;

  private static final long THRESHOLD_READING_TICKS = 8 * LightMeter.TICKS_PER_BLOCK;

  /** The LED stays off between two pulses for 20 ms at least. */
  private static final long PULSE_GAP_TICKS_LEAST = 320_000;

  /** The reference LED does not stay on for longer than 10 s. */
  private static final long STEADY_TICKS_MOST = 160_000_000;

  /** Blocks that wait for the transmitter; those beyond are skipped. */
  private static final int BLOCKS_KEPT_MOST = 40;

  /** A line of light has 32 bytes. */
  private static final long BLOCK_LINE_TICKS = 32 * Sender.TICKS_PER_BYTE;

  private final PracticeWorld world;
  private final long startTicks;
  private final long bootCount;
  private final LightMeter meter;
  private final Sender sender = new Sender();
  private final Thresholds thresholds = new Thresholds();
  private final Set<Channel> high = EnumSet.noneOf(Channel.class);
  private final LineReader received = new LineReader();
  private long receiverFreeTicks;
  private int sequence;
  private long edges;
  private int badLines;
  private int longLines;
  private long edgesTold;
  private long obeyedTicks;
  private int lightRequest;
  private int blocksToCome;
  private boolean sendingLast;
  private final ArrayDeque<IntFunction<RigMessage>> curveLines = new ArrayDeque<>();
  private boolean takesCurves = true;
  private boolean longCurveIsAsked;
  private int curves;
  private boolean readingThresholds;
  private Optional<ThresholdSweep> sweep = Optional.empty();
  private int referenceRequest;
  private boolean referenceIsOn;
  private double lightWithoutReference;
  private final ArrayDeque<IntFunction<RigMessage>> blocks = new ArrayDeque<>();

  PracticeBoard(PracticeWorld world, long startTicks, long bootCount, LightMeter meter) {
    this.world = world;
    this.startTicks = startTicks;
    this.bootCount = bootCount;
    this.meter = meter;
    world.inputs().forEach(high::add);
    for (Channel channel : Channel.values()) {
      if (channel.isLight()
          && meter
              .comparator(channel)
              .isOn(
                  meter.steadyMillivolts(channel, startTicks),
                  thresholds.millivolts(channel, startTicks),
                  false)) {
        high.add(channel);
      }
    }
    later(startTicks + GREETING_TICKS, this::greet);
    later(startTicks + BEAT_TICKS, this::beatAndAgain);
  }

  Sender sender() {
    return sender;
  }

  long startTicks() {
    return startTicks;
  }

  double lowMillivolts() {
    return thresholds.lowMillivolts(world.now());
  }

  double highMillivolts() {
    return thresholds.highMillivolts(world.now());
  }

  /** An input changed, stamped with ticks of the world. A change to the same level is none. */
  void edge(Channel channel, boolean toHigh, long ticks) {
    if (toHigh ? high.add(channel) : high.remove(channel)) {
      edges++;
      send(at -> new RigMessage.EdgeSeen(at, channel, toHigh, (int) (ticks - startTicks)));
    }
  }

  /** Whether the converter is free to follow an opening. */
  boolean takesCurve() {
    return takesCurves && blocksToCome == 0 && !readingThresholds && sweep.isEmpty();
  }

  /** Whether the next curve is a long one. */
  boolean takesLongCurve() {
    return longCurveIsAsked;
  }

  /** The light of an opening, sampled; told once it is over, behind all edges. */
  void reportCurve(SampledLight light) {
    longCurveIsAsked &= !light.isLong();
    SampledLight.Part last = light.parts().get(light.parts().size() - 1);
    later(
        last.firstTicks() + last.values().size() * last.periodTicks(),
        () -> {
          curveLines.addAll(CurveLines.of(light, curves & 0xFF, startTicks));
          curves++;
          beginSendingLast();
        });
  }

  /** Bytes from the host; each takes its time on the wire. */
  void receive(byte[] bytes) {
    long from = Math.max(receiverFreeTicks, world.isPaced() ? world.now() : world.start());
    for (int i = 0; i < bytes.length; i++) {
      long ticks = from + (i + 1) * Sender.TICKS_PER_BYTE;
      for (String line : received.accept(new byte[] {bytes[i]}, 1)) {
        if (!world.isPaced()) {
          world.occupy(ticks + COMMAND_TICKS + ownTicks(line));
        }
        later(ticks, () -> onLine(line));
      }
    }
    receiverFreeTicks = from + bytes.length * Sender.TICKS_PER_BYTE;
  }

  /** What a command takes beyond the time that every one has to itself. */
  private static long ownTicks(String line) {
    if (LineCodec.parse(line) instanceof ParsedLine.Command command) {
      if (command.command() instanceof RigCommand.DriveReference drive
          && drive.drive().isPulsed()) {
        return drive.count() * pulsePeriodTicks(drive);
      }
      if (command.command() instanceof RigCommand.SweepThreshold sweep) {
        return ThresholdSweep.ticks(sweep);
      }
    }
    return 0;
  }

  private static long pulsePeriodTicks(RigCommand.DriveReference drive) {
    return drive.widthTicks() + Math.max(drive.widthTicks(), PULSE_GAP_TICKS_LEAST);
  }

  private void onLine(String line) {
    ParsedLine parsed = LineCodec.parse(line);
    if (parsed instanceof ParsedLine.Command command) {
      long ticks = world.now();
      long begin = Math.max(ticks + THINKING_TICKS, obeyedTicks);
      // One after the other, so that nothing begins while thresholds are read.
      obeyedTicks =
          command.command() instanceof RigCommand.AskThresholds
              ? begin + THRESHOLD_READING_TICKS
              : begin;
      later(begin, () -> obey(command.sequence(), command.command(), ticks));
    } else if (parsed instanceof ParsedLine.UnknownKind unknown) {
      if (Character.isLowerCase(unknown.kind())) {
        answer(unknown.sequence(), Result.UNKNOWN_COMMAND);
      }
    } else if (parsed instanceof ParsedLine.Bad bad && bad.reason() == ParsedLine.Reason.FIELDS) {
      // Only the fields are wrong: kind and counter of the line can be believed.
      if (Character.isLowerCase(line.charAt(0))) {
        answer(Integer.parseInt(line.substring(2, 6), 16), Result.BAD_FIELDS);
      }
    } else if (parsed instanceof ParsedLine.Bad bad && bad.reason() == ParsedLine.Reason.TOO_LONG) {
      longLines++;
      sendLosses();
    } else if (parsed instanceof ParsedLine.Bad) {
      badLines++;
      sendLosses();
    }
    // What is left is a line of a rig: no command, so no answer.
  }

  private void obey(int commandSequence, RigCommand command, long receivedTicks) {
    if (command instanceof RigCommand.AskGreeting) {
      greet();
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.AskStatus) {
      beat();
      sendLosses();
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.Ping ping) {
      // The first byte leaves when those before it are out.
      long sentTicks = sender.firstByteTicks(world.now());
      send(at -> new RigMessage.Echo(at, ping.token(), ticks48(receivedTicks), ticks48(sentTicks)));
      answer(commandSequence, Result.DONE);
    } else if (sweep.isPresent() && isWithTheThresholds(command)) {
      answer(commandSequence, Result.BUSY);
    } else if (command instanceof RigCommand.SetThresholds set) {
      setThresholds(set.lowCode(), set.highCode());
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.AskThresholds) {
      readThresholds(commandSequence);
    } else if (command instanceof RigCommand.MeasureLight measure) {
      answer(commandSequence, Result.DONE);
      measureLight(measure);
    } else if (command instanceof RigCommand.SetSerial set) {
      world.serial(set.serial());
      greet();
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.TakeCurves take) {
      takesCurves = take.mode() != RigCommand.CurveMode.OFF;
      longCurveIsAsked = take.mode() == RigCommand.CurveMode.NEXT_ONE_LONG;
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.DriveReference drive) {
      answer(commandSequence, Result.DONE);
      driveReference(drive);
    } else if (command instanceof RigCommand.SweepThreshold wanted) {
      sweep(commandSequence, wanted);
    }
  }

  /** What would get into the way of a sweep. */
  private static boolean isWithTheThresholds(RigCommand command) {
    return command instanceof RigCommand.SetThresholds
        || command instanceof RigCommand.AskThresholds
        || command instanceof RigCommand.MeasureLight
        || command instanceof RigCommand.SweepThreshold;
  }

  private void greet() {
    send(
        at ->
            new RigMessage.Greeting(
                at,
                1,
                TickRate.BOARD_16_MHZ.ticksPerSecond(),
                "full",
                ALL_CHANNELS,
                world.serial(),
                bootCount,
                "power",
                FIRMWARE,
                ticks48(world.now())));
  }

  private void beatAndAgain() {
    beat();
    if (edges != edgesTold) {
      sendLosses();
    }
    later(world.now() + BEAT_TICKS, this::beatAndAgain);
  }

  private void beat() {
    int mask = high.stream().mapToInt(channel -> 1 << channel.code()).sum();
    long counted = world.now() - startTicks;
    long millisecond = counted - counted % LightMeter.TICKS_PER_BLOCK;
    LightMeter.Block light =
        meter.block(
            Channel.CENTRE_LOW, startTicks + Math.max(0, millisecond - LightMeter.TICKS_PER_BLOCK));
    send(at -> new RigMessage.Beat(at, ticks48(world.now()), mask, light.sum()));
  }

  private void sendLosses() {
    edgesTold = edges;
    send(at -> new RigMessage.Losses(at, edges, 0, 0, 0, badLines, longLines, 0));
  }

  private void setThresholds(int lowCode, int highCode) {
    long now = world.now();
    thresholds.set(lowCode, highCode, now);
    for (Channel channel : Channel.values()) {
      if (channel.isLight()) {
        double light = meter.steadyMillivolts(channel, now);
        double open = world.light().openAt(now);
        LevelComparator comparator = meter.comparator(channel);
        DoubleStream.of(light - comparator.onMillivolts(0), light - comparator.offMillivolts(0))
            .distinct()
            .mapToObj(passed -> thresholds.passes(channel, passed))
            .flatMapToLong(OptionalLong::stream)
            .forEach(
                ticks -> {
                  world.reach(ticks);
                  later(ticks, () -> compare(channel, open, light));
                });
      }
    }
  }

  /** A threshold has passed the light, unless one of the two went elsewhere in the meantime. */
  private void compare(Channel channel, double openThen, double lightThen) {
    long now = world.now();
    boolean moved = world.light().openAt(now) != openThen;
    double light = moved ? meter.steadyMillivolts(channel, now) : lightThen;
    compare(channel, light);
  }

  private void compare(Channel channel, double light) {
    long now = world.now();
    boolean above =
        meter
            .comparator(channel)
            .isOn(light, thresholds.millivolts(channel, now), high.contains(channel));
    if (above != high.contains(channel)) {
      edge(channel, above, world.stamp(channel, now));
    }
  }

  /** Sweeps a threshold through the light, whatever the light is. */
  private void sweep(int commandSequence, RigCommand.SweepThreshold wanted) {
    if (blocksToCome > 0 || readingThresholds) {
      answer(commandSequence, Result.BUSY);
      return;
    }
    world.reach(world.now() + ThresholdSweep.ticks(wanted));
    sweep = Optional.of(new ThresholdSweep(wanted));
    look(sweep.orElseThrow(), commandSequence);
  }

  private void look(ThresholdSweep under, int commandSequence) {
    if (under.isOver()) {
      sweep = Optional.empty();
      setThresholds(thresholds.lowCode(), thresholds.highCode());
      answer(commandSequence, Result.DONE);
      return;
    }
    Channel channel = under.channel();
    if (under.isNewCode()) {
      thresholds.setFine(channel, under.fineCode(), world.now());
    }
    later(
        world.now() + LightMeter.TICKS_PER_BLOCK,
        () -> {
          boolean before = high.contains(channel);
          for (Channel each : Channel.values()) {
            if (each.isLight()) {
              compare(each, meter.extremeMillivolts(each, world.now(), !high.contains(each)));
            }
          }
          if (under.tells(before, high.contains(channel))) {
            int level = meter.thresholdSum(thresholds.millivolts(channel, world.now()));
            // The threshold stands while it is read, and then the light.
            later(
                world.now() + ThresholdSweep.READING_TICKS,
                () -> {
                  reportTrip(under, level);
                  under.next();
                  look(under, commandSequence);
                });
          } else {
            under.next();
            look(under, commandSequence);
          }
        });
  }

  private void reportTrip(ThresholdSweep under, int level) {
    int light = meter.block(Channel.CENTRE_LOW, world.now() - LightMeter.TICKS_PER_BLOCK).sum();
    int code = under.hasTripped() ? under.fineCode() : 0;
    boolean rising = under.isRising();
    send(at -> new RigMessage.TripPoint(at, under.channel(), rising, code, level, light));
  }

  private void driveReference(RigCommand.DriveReference drive) {
    referenceRequest++;
    long now = world.now();
    if (referenceIsOn) {
      referenceIsOn = false;
      world.shine(now, ReferenceLed.off(lightWithoutReference));
    }
    if (drive.drive() == ReferenceDrive.STEADY) {
      lightWithoutReference = world.light().openAt(now);
      referenceIsOn = true;
      // One tick on, so that an LED that was on before is seen to go off.
      world.shine(now + 1, ReferenceLed.on(lightWithoutReference));
      int request = referenceRequest;
      later(
          now + STEADY_TICKS_MOST,
          () -> {
            if (request == referenceRequest) {
              driveReference(RigCommand.DriveReference.off());
            }
          });
    } else if (drive.drive().isPulsed()) {
      world.reach(now + drive.count() * pulsePeriodTicks(drive));
      planPulse(drive, 0, now + THINKING_TICKS, referenceRequest);
    }
  }

  private void planPulse(RigCommand.DriveReference drive, int index, long beginTicks, int request) {
    later(
        beginTicks,
        () -> {
          if (request != referenceRequest) {
            return;
          }
          double base = world.light().openAt(beginTicks);
          double seconds = TickRate.BOARD_16_MHZ.seconds(drive.widthTicks());
          world.shine(
              beginTicks,
              drive.drive() == ReferenceDrive.SQUARE
                  ? ReferenceLed.square(base, seconds)
                  : ReferenceLed.ramped(base, seconds));
          long endTicks = beginTicks + drive.widthTicks();
          later(
              endTicks,
              () ->
                  send(
                      at ->
                          new RigMessage.PulseMade(
                              at,
                              index,
                              drive.drive(),
                              (int) (beginTicks - startTicks),
                              (int) (endTicks - startTicks))));
          if (index + 1 < drive.count()) {
            planPulse(drive, index + 1, beginTicks + pulsePeriodTicks(drive), request);
          }
        });
  }

  private void readThresholds(int commandSequence) {
    if (blocksToCome > 0) {
      // There is one converter, and it is on the light.
      answer(commandSequence, Result.BUSY);
      return;
    }
    long until = world.now() + THRESHOLD_READING_TICKS;
    world.reach(until);
    readingThresholds = true;
    later(
        until,
        () -> {
          readingThresholds = false;
          int lowSum = meter.thresholdSum(lowMillivolts());
          int highSum = meter.thresholdSum(highMillivolts());
          send(
              at ->
                  new RigMessage.Thresholds(
                      at, thresholds.lowCode(), thresholds.highCode(), lowSum, highSum));
          answer(commandSequence, Result.DONE);
        });
  }

  /** A new request takes the place of one under way. */
  private void measureLight(RigCommand.MeasureLight measure) {
    lightRequest++;
    blocks.clear();
    blocksToCome = measure.blocks();
    if (blocksToCome == 0) {
      return;
    }
    long counted = world.now() - startTicks;
    long first =
        startTicks + (counted / LightMeter.TICKS_PER_BLOCK + 1) * LightMeter.TICKS_PER_BLOCK;
    world.reach(
        first
            + (long) blocksToCome * LightMeter.TICKS_PER_BLOCK
            + BLOCKS_KEPT_MOST * BLOCK_LINE_TICKS);
    planBlock(measure.channel(), 0, first, lightRequest);
  }

  private void planBlock(Channel channel, int index, long from, int request) {
    later(
        from + LightMeter.TICKS_PER_BLOCK,
        () -> {
          if (request != lightRequest) {
            return;
          }
          LightMeter.Block block = meter.block(channel, from);
          // At 250000 baud a line of light takes longer than a block: in time some are skipped.
          if (blocks.size() < BLOCKS_KEPT_MOST) {
            blocks.add(
                at ->
                    new RigMessage.LightBlock(
                        at, channel, index, block.sum(), block.least(), block.most()));
            beginSendingLast();
          }
          blocksToCome--;
          if (blocksToCome > 0) {
            planBlock(channel, index + 1, from + LightMeter.TICKS_PER_BLOCK, request);
          }
        });
  }

  private void beginSendingLast() {
    if (!sendingLast) {
      sendingLast = true;
      sendNextOfTheLast();
    }
  }

  /** Light goes last: curves and blocks are sent only when no other line waits. */
  private void sendNextOfTheLast() {
    long free = sender.firstByteTicks(world.now());
    if (free > world.now()) {
      later(free, this::sendNextOfTheLast);
    } else if (curveLines.isEmpty() && blocks.isEmpty()) {
      sendingLast = false;
    } else {
      send(curveLines.isEmpty() ? blocks.remove() : curveLines.remove());
      later(sender.firstByteTicks(world.now()), this::sendNextOfTheLast);
    }
  }

  private void answer(int commandSequence, Result result) {
    send(at -> new RigMessage.Answer(at, commandSequence, result));
  }

  private void send(IntFunction<RigMessage> message) {
    sender.send(LineCodec.format(message.apply(sequence)), world.now());
    sequence = (sequence + 1) & 0xFFFF;
  }

  private long ticks48(long worldTicks) {
    return (worldTicks - startTicks) & TICKS_48;
  }

  /** Plans something that does not happen once the power is gone. */
  private void later(long ticks, Runnable action) {
    world.later(
        ticks,
        () -> {
          if (world.board() == this) {
            action.run();
          }
        });
  }
}
