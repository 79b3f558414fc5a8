package org.halflight.rig;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import org.halflight.link.Link;
import org.halflight.link.LinkLostException;
import org.halflight.words.Words;

/**
 * Writes lines to a link on a thread of its own, so that a device that takes nothing holds up
 * nobody who reads. One writer belongs to one link; {@link #close} ends it.
 *
 * <p>{@link #write}, {@link #drainSent}, {@link #trouble} and {@link #close} may be called from any
 * thread.
 */
final class LineWriter implements AutoCloseable {
  private static final long LOOK_ROUND_MILLIS = 200;

  private final Link link;
  private final LongSupplier nanos;
  private final BlockingQueue<String> waiting = new LinkedBlockingQueue<>();
  private final Queue<WireLine> sent = new ConcurrentLinkedQueue<>();
  private final Thread thread = new Thread(this::run, "halflight-rig-writer");
  private volatile Optional<LinkLostException> trouble = Optional.empty();
  private volatile boolean closed;

  LineWriter(Link link, LongSupplier nanos) {
    this.link = link;
    this.nanos = nanos;
    thread.setDaemon(true);
    thread.start();
  }

  /** Takes a line to be sent, without line end; does not wait. */
  void write(String line) {
    waiting.add(line);
  }

  /** Hands over the lines that were sent since the last call, in order. */
  void drainSent(Consumer<WireLine> to) {
    for (WireLine line = sent.poll(); line != null; line = sent.poll()) {
      to.accept(line);
    }
  }

  /** Why nothing can be sent any longer, if so. */
  Optional<LinkLostException> trouble() {
    return trouble;
  }

  /** Ends the thread; a write that hangs ends when the link is closed. Does not wait. */
  @Override
  public void close() {
    closed = true;
    thread.interrupt();
  }

  private void run() {
    try {
      while (!closed) {
        String line = waiting.poll(LOOK_ROUND_MILLIS, TimeUnit.MILLISECONDS);
        if (line != null) {
          // Noted before it goes out, so that no answer to it is noted earlier.
          sent.add(new WireLine(nanos.getAsLong(), true, line));
          link.write((line + '\n').getBytes(StandardCharsets.US_ASCII));
        }
      }
    } catch (LinkLostException gone) {
      trouble = Optional.of(gone);
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error fault) {
      // Whoever sends must not wait for ever; the link is looked for anew.
      trouble = Optional.of(new LinkLostException(Words.say("rig.lost.writeFault")));
      throw fault;
    }
  }
}
