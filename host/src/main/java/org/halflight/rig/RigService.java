package org.halflight.rig;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.halflight.link.LinkLostException;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.words.Words;

/** One stretch of being connected to a rig. For the reader thread of one connection. */
final class RigService {
  /** A rig that was silent for three beats is lost, by protocol. */
  static final long SILENCE_NANOS = TimeUnit.MICROSECONDS.toNanos(3 * 262_144);

  /**
   * Time alone does not make a silence: after the computer slept, what came meanwhile must be read
   * first.
   */
  private static final int SILENT_READS = 4;

  private final OpenRig rig;
  private final CommandQueue commands;
  private final RigConnection.Listener listener;
  private final LongSupplier nanos;
  private final byte[] buffer = new byte[4096];
  private Greeting greeting;
  private long lastHeardNanos;
  private int readsSinceHeard;

  RigService(
      OpenRig rig, CommandQueue commands, RigConnection.Listener listener, LongSupplier nanos) {
    this.rig = rig;
    this.commands = commands;
    this.listener = listener;
    this.nanos = nanos;
    greeting = rig.greeting();
    lastHeardNanos = nanos.getAsLong();
  }

  /** What the rig last said of itself. */
  Greeting greeting() {
    return greeting;
  }

  /**
   * Reads and writes as long as the connection is open.
   *
   * @param sendDue sends the command whose turn it is
   * @throws LinkLostException when the rig goes away
   */
  void run(LineWriter to, Runnable sendDue, BooleanSupplier isOpen) {
    // Told again as it was, times included: it came before the rig was known to be the one.
    rig.lines().forEach(this::publish);
    try {
      while (isOpen.getAsBoolean()) {
        step(to, sendDue);
      }
    } finally {
      to.drainSent(this::publish);
    }
  }

  private void step(LineWriter to, Runnable sendDue) {
    // Outside the lock: giving up a command runs whatever waits for it.
    commands.overdue(nanos.getAsLong()).ifPresent(to::write);
    sendDue.run();
    int count = read();
    long at = nanos.getAsLong();
    to.drainSent(this::publish);
    if (to.trouble().isPresent()) {
      throw stopped();
    }
    readsSinceHeard++;
    for (String text : rig.reader().accept(buffer, count)) {
      RigLine line = RigLine.of(text);
      listener.received(at, line);
      onLine(line.parsed(), at);
    }
    if (at - lastHeardNanos > SILENCE_NANOS && readsSinceHeard >= SILENT_READS) {
      throw stopped();
    }
  }

  private int read() {
    try {
      return rig.link().read(buffer);
    } catch (LinkLostException gone) {
      throw new LinkLostException(stopped().getMessage(), gone);
    }
  }

  private void publish(WireLine line) {
    if (line.toRig()) {
      listener.sent(line.hostNanos(), line.line());
    } else {
      listener.received(line.hostNanos(), RigLine.of(line.line()));
    }
  }

  private void onLine(ParsedLine parsed, long at) {
    if (parsed instanceof ParsedLine.Bad) {
      return;
    }
    lastHeardNanos = at;
    readsSinceHeard = 0;
    if (parsed instanceof ParsedLine.Message found) {
      if (found.message() instanceof RigMessage.Answer answer) {
        commands.answered(answer.commandSequence(), answer.result());
      } else if (found.message() instanceof RigMessage.Beat beat) {
        commands.beat(beat.ticks());
      } else if (found.message() instanceof Greeting now) {
        greeting = now;
      }
    }
  }

  private LinkLostException stopped() {
    return new LinkLostException(
        Words.say("rig.lost.silent", RigNames.of(greeting), rig.candidate().path()));
  }

  /** The rig with what it last said of itself. */
  OpenRig asItIsNow() {
    return new OpenRig(
        rig.candidate(),
        rig.link(),
        rig.reader(),
        greeting,
        rig.baudRate(),
        commands.nextSequence(),
        List.of());
  }
}
