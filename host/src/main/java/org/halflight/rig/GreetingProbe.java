package org.halflight.rig;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.halflight.link.Link;
import org.halflight.rig.RigMessage.Greeting;

/** Asks whatever is at the other end of a link for its greeting, and listens. For one thread. */
final class GreetingProbe {
  private static final int READS_LEAST = 4;

  private final Link link;
  private final LongSupplier nanos;
  private final BooleanSupplier goOn;
  private final byte[] buffer = new byte[4096];
  private final List<WireLine> lines = new ArrayList<>();
  private LineReader reader;
  private int nextSequence;
  private boolean receivedBytes;
  private boolean receivedRigLines;

  GreetingProbe(
      Link link, LineReader reader, int nextSequence, LongSupplier nanos, BooleanSupplier goOn) {
    this.link = link;
    this.reader = reader;
    this.nextSequence = nextSequence;
    this.nanos = nanos;
    this.goOn = goOn;
  }

  /** Forgets what was heard at another speed: it was noise. */
  void changeSpeed(int baudRate) {
    link.setBaudRate(baudRate);
    reader = new LineReader();
    lines.clear();
  }

  /**
   * Listens for a greeting, asking for it at once and then every so often.
   *
   * @param limitNanos how long at most, but for the last wait of the link
   * @throws org.halflight.link.LinkLostException when the link goes away
   */
  Optional<Greeting> listen(long limitNanos, long askEveryNanos) {
    long start = nanos.getAsLong();
    long askAfter = 0;
    long passed = 0;
    int reads = 0;
    // Time alone is no silence: a computer that was busy has not yet read what came meanwhile.
    while ((passed < limitNanos || reads < READS_LEAST) && goOn.getAsBoolean()) {
      if (passed >= askAfter) {
        ask();
        askAfter = passed + askEveryNanos;
      }
      int count = link.read(buffer);
      reads++;
      Optional<Greeting> greeting = handle(count, nanos.getAsLong());
      if (greeting.isPresent()) {
        return greeting;
      }
      passed = nanos.getAsLong() - start;
    }
    return Optional.empty();
  }

  private void ask() {
    String line = LineCodec.format(nextSequence, new RigCommand.AskGreeting());
    nextSequence = (nextSequence + 1) & 0xFFFF;
    lines.add(new WireLine(nanos.getAsLong(), true, line));
    link.write((line + '\n').getBytes(StandardCharsets.US_ASCII));
  }

  private Optional<Greeting> handle(int count, long at) {
    receivedBytes |= count > 0;
    Optional<Greeting> greeting = Optional.empty();
    for (String line : reader.accept(buffer, count)) {
      lines.add(new WireLine(at, false, line));
      if (LineCodec.parse(line) instanceof ParsedLine.Message found) {
        receivedRigLines = true;
        if (found.message() instanceof Greeting one) {
          // Of two greetings in one go the later one holds: the board has started in between.
          greeting = Optional.of(one);
        }
      }
    }
    return greeting;
  }

  /** Whether whoever waits no longer wants to. */
  boolean isEnded() {
    return !goOn.getAsBoolean();
  }

  boolean receivedBytes() {
    return receivedBytes;
  }

  boolean receivedRigLines() {
    return receivedRigLines;
  }

  LineReader reader() {
    return reader;
  }

  int nextSequence() {
    return nextSequence;
  }

  List<WireLine> lines() {
    return lines;
  }
}
