package org.halflight.rig.practice;

import org.halflight.rig.LineReader;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigLine;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.SampledLight;
import org.halflight.time.TickRate;

/**
 * One life of the practice board, from its start until its power goes: speaks the line protocol.
 * All times handed in are those of the world; the board counts its ticks from its own start.
 */
final class PracticeBoard {
  private static final String FIRMWARE = "practice-1";

  /** Masks of docs/protocol.md. */
  static int channels(BoardTraits traits) {
    return switch (traits.kind()) {
      case FULL -> 0xFF;
      case SMALL -> 0xE1;
      case STARTER -> 0xC1;
    };
  }

  /** How long the board takes to its first line. */
  private static final long GREETING_TICKS = 0x12C0;

  static final long BEAT_TICKS = 1L << 22;

  /** From the last byte of a command to the first of its answer; invented. */
  private static final long THINKING_TICKS = 800;

  /** Unpaced, every command has this time to itself: what a threshold needs to settle. */
  private static final long COMMAND_TICKS = 100L * LightMeter.TICKS_PER_BLOCK;

  private final PracticeWorld world;
  private final long bootCount;
  private final LightMeter meter;
  private final BoardLife life;
  private final Sender sender;
  private final BoardInputs inputs;
  private final ConverterWork converter;
  private final ReferenceLed led;
  private final LineReader received = new LineReader();
  private long receiverFreeTicks;
  private int badLines;
  private int longLines;
  private long edgesTold;
  private long obeyedTicks;
  private boolean sweeping;

  PracticeBoard(PracticeWorld world, long startTicks, long bootCount, LightMeter meter) {
    this.world = world;
    this.bootCount = bootCount;
    this.meter = meter;
    life = new BoardLife(world, startTicks, () -> world.board() == this);
    sender = new Sender(life);
    inputs = new BoardInputs(life, meter, sender);
    converter = new ConverterWork(life, meter, inputs.thresholds(), sender);
    led = new ReferenceLed(life, sender);
    life.later(startTicks + GREETING_TICKS, this::greet);
    life.later(startTicks + BEAT_TICKS, this::beatAndAgain);
  }

  Sender sender() {
    return sender;
  }

  long startTicks() {
    return life.startTicks();
  }

  double lowMillivolts() {
    return inputs.thresholds().lowMillivolts(world.now());
  }

  double highMillivolts() {
    return inputs.thresholds().highMillivolts(world.now());
  }

  /** An input changed, stamped with ticks of the world. A change to the same level is none. */
  void edge(Channel channel, boolean toHigh, long ticks) {
    inputs.edge(channel, toHigh, ticks);
  }

  Thresholds thresholds() {
    return inputs.thresholds();
  }

  /** Compares all light with its thresholds. */
  void compareAll() {
    inputs.compareAll();
  }

  /** Whether the converter is free to follow an opening. */
  boolean recordsCurve() {
    return converter.recordsCurves() && converter.isFree() && !sweeping;
  }

  /** Whether the next curve is a long one. */
  boolean recordsLongCurve() {
    return converter.recordsLongCurve();
  }

  /** The light of an opening, sampled; told once it is over, behind all edges. */
  void reportCurve(SampledLight light) {
    converter.reportCurve(light);
  }

  /** Bytes from the host; each takes its time on the wire. */
  void receive(byte[] bytes) {
    long from = Math.max(receiverFreeTicks, world.isPaced() ? world.now() : world.start());
    for (int i = 0; i < bytes.length; i++) {
      long ticks = from + (i + 1) * Sender.TICKS_PER_BYTE;
      for (String text : received.accept(new byte[] {bytes[i]}, 1)) {
        RigLine line = RigLine.of(text);
        if (!world.isPaced()) {
          world.occupy(ticks + COMMAND_TICKS + ownTicks(line.parsed()));
        }
        life.later(ticks, () -> onLine(line));
      }
    }
    receiverFreeTicks = from + bytes.length * Sender.TICKS_PER_BYTE;
  }

  /** What a command takes beyond the time that every one has to itself. */
  private static long ownTicks(ParsedLine line) {
    if (line instanceof ParsedLine.Command command) {
      if (command.command() instanceof RigCommand.DriveReference drive) {
        return ReferenceLed.ticks(drive);
      }
      if (command.command() instanceof RigCommand.SweepThreshold sweep) {
        return ThresholdSweep.ticks(sweep);
      }
    }
    return 0;
  }

  private void onLine(RigLine line) {
    ParsedLine parsed = line.parsed();
    if (parsed instanceof ParsedLine.Command command) {
      long ticks = world.now();
      long begin = Math.max(ticks + THINKING_TICKS, obeyedTicks);
      // One after the other, so that nothing begins while thresholds are read.
      obeyedTicks =
          command.command() instanceof RigCommand.AskThresholds
              ? begin + ConverterWork.THRESHOLD_READING_TICKS
              : begin;
      life.later(begin, () -> obey(command.sequence(), command.command(), ticks));
    } else if (parsed instanceof ParsedLine.UnknownKind unknown) {
      if (Character.isLowerCase(unknown.kind())) {
        answer(unknown.sequence(), Result.UNKNOWN_COMMAND);
      }
    } else if (parsed instanceof ParsedLine.Bad bad && bad.reason() == ParsedLine.Reason.FIELDS) {
      // Only the fields are wrong: kind and counter of the line can be believed.
      if (Character.isLowerCase(line.text().charAt(0))) {
        answer(Integer.parseInt(line.text().substring(2, 6), 16), Result.BAD_FIELDS);
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
      long sentTicks = sender.firstByteTicks();
      sender.send(
          at ->
              new RigMessage.Echo(
                  at, ping.token(), life.ticks48(receivedTicks), life.ticks48(sentTicks)));
      answer(commandSequence, Result.DONE);
    } else if (isNotOn(world.traits(), command)) {
      answer(commandSequence, Result.NOT_ON_THIS_RIG);
    } else if (sweeping && isWithTheThresholds(command)) {
      answer(commandSequence, Result.BUSY);
    } else if (command instanceof RigCommand.SetThresholds set) {
      inputs.setThresholds(set.lowCode(), set.highCode());
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.AskThresholds) {
      converter.readThresholds(commandSequence);
    } else if (command instanceof RigCommand.MeasureLight measure) {
      answer(commandSequence, Result.DONE);
      converter.measure(measure);
    } else if (command instanceof RigCommand.SetSerial set) {
      world.serial(set.serial());
      greet();
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.TakeCurves take) {
      converter.curves(take.mode());
      answer(commandSequence, Result.DONE);
    } else if (command instanceof RigCommand.DriveReference drive) {
      answer(commandSequence, Result.DONE);
      led.drive(drive);
    } else if (command instanceof RigCommand.SweepThreshold wanted) {
      sweep(commandSequence, wanted);
    }
  }

  /** What a rig of a fixed level has nothing for. */
  private static boolean isNotOn(BoardTraits traits, RigCommand command) {
    return traits.fixedLevel()
        && (command instanceof RigCommand.SetThresholds
            || command instanceof RigCommand.SweepThreshold
            || command instanceof RigCommand.DriveReference
            || (command instanceof RigCommand.MeasureLight light
                && light.channel() != Channel.CENTRE_LOW));
  }

  /** What would get into the way of a sweep. */
  private static boolean isWithTheThresholds(RigCommand command) {
    return command instanceof RigCommand.SetThresholds
        || command instanceof RigCommand.AskThresholds
        || command instanceof RigCommand.MeasureLight
        || command instanceof RigCommand.SweepThreshold;
  }

  private void greet() {
    sender.send(
        at ->
            new RigMessage.Greeting(
                at,
                1,
                TickRate.BOARD_16_MHZ.ticksPerSecond(),
                BoardTraits.Kind.WORDS.word(world.traits().kind()),
                channels(world.traits()),
                world.serial(),
                bootCount,
                "power",
                FIRMWARE,
                life.ticks48(world.now())));
  }

  private void beatAndAgain() {
    beat();
    if (inputs.edges() != edgesTold) {
      sendLosses();
    }
    life.later(world.now() + BEAT_TICKS, this::beatAndAgain);
  }

  private void beat() {
    int mask = inputs.levels();
    long millisecond = life.age() - life.age() % LightMeter.TICKS_PER_BLOCK;
    LightMeter.Block light =
        meter.block(
            Channel.CENTRE_LOW,
            life.startTicks() + Math.max(0, millisecond - LightMeter.TICKS_PER_BLOCK));
    sender.send(at -> new RigMessage.Beat(at, life.ticks48(world.now()), mask, light.sum()));
  }

  private void sendLosses() {
    edgesTold = inputs.edges();
    sender.send(at -> new RigMessage.Losses(at, edgesTold, 0, 0, 0, badLines, longLines, 0));
  }

  private void sweep(int commandSequence, RigCommand.SweepThreshold wanted) {
    if (!converter.isFree()) {
      answer(commandSequence, Result.BUSY);
      return;
    }
    sweeping = true;
    Runnable whenOver =
        () -> {
          sweeping = false;
          inputs.setThresholds(inputs.thresholds().lowCode(), inputs.thresholds().highCode());
          answer(commandSequence, Result.DONE);
        };
    new ThresholdSweep(wanted, life, inputs, meter, sender, whenOver).begin();
  }

  private void answer(int commandSequence, Result result) {
    sender.answer(commandSequence, result);
  }
}
