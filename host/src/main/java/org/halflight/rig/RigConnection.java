package org.halflight.rig;

import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.LongSupplier;
import org.halflight.link.LinkLostException;
import org.halflight.link.LinkState;
import org.halflight.link.Ports;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Result;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Finds a rig, reads it, sends it commands, notices when it goes away, and finds it again, under
 * whatever port name.
 *
 * <p>A rig with a serial number is known again by that; one without by being the only such rig, or
 * the only one whose boot count fits.
 *
 * <p>While no rig is found, ports are looked at again and again, but a board that answered wrongly
 * or not at all is not opened again (and so restarted) until its port has gone and come back, or
 * {@link #searchAgain} is called. Only the port where the rig was is always tried.
 *
 * <p>Threads: everything the {@link Listener} hears, it hears on one thread of this connection, in
 * order. All methods may be called from any thread, the listener's included, and none waits for the
 * rig; {@link #close} waits up to 3 s for the thread to end, unless that thread calls it.
 */
public final class RigConnection implements AutoCloseable {
  private static final long PAUSE_NANOS = TimeUnit.MILLISECONDS.toNanos(500);
  private static final long CLOSE_WAIT_MILLIS = 3000;

  /**
   * Hears what happens on a connection. It must not throw: that ends the connection.
   *
   * <p>The lines that were exchanged while the rig was looked for come right behind the change that
   * tells of it, and with their own, earlier times.
   */
  public interface Listener {
    /**
     * A line came.
     *
     * @param hostNanos when its last byte was there, by the clock of this connection
     */
    void received(long hostNanos, RigLine line);

    /** A line was given to the link; heard before anything that answers it. */
    void sent(long hostNanos, String line);

    /** Rig found, lost or back, or news of the search. */
    void changed(LinkChange change);
  }

  /** Waits a while between two searches. */
  @FunctionalInterface
  interface Pause {
    /** Waits so long, or until the connection is closed. */
    void nanos(long nanos);
  }

  private final RigSeeker seeker;
  private final Listener listener;
  private final LongSupplier nanos;
  private final Pause pause;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final AtomicBoolean started = new AtomicBoolean();
  private final CommandQueue commands = new CommandQueue();

  /** What is to be done with the ports while this connection has none of them open. */
  private final Queue<Runnable> errands = new ConcurrentLinkedQueue<>();

  private final Thread thread = new Thread(this::run, "halflight-rig-reader");

  /** Guards {@link #writer} together with what is put into {@link #commands}. */
  private final Object commandLock = new Object();

  /** Present while a rig is connected. */
  private Optional<LineWriter> writer = Optional.empty();

  /** Of the reader thread only. */
  private Optional<LinkChange> lastChange = Optional.empty();

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   */
  public RigConnection(Ports ports, RigSelector wish, Listener listener, LongSupplier nanos) {
    this(ports, wish, listener, nanos, Optional.empty());
  }

  RigConnection(
      Ports ports, RigSelector wish, Listener listener, LongSupplier nanos, Optional<Pause> pause) {
    this.listener = listener;
    this.nanos = nanos;
    this.pause = pause.orElse(this::waitForClose);
    seeker =
        new RigSeeker(
            ports, wish, nanos, this::change, () -> this.pause.nanos(PAUSE_NANOS), this::isServing);
    thread.setDaemon(true);
  }

  /**
   * Begins to look for the rig.
   *
   * @throws IllegalStateException when it has begun before
   */
  public void start() {
    if (!started.compareAndSet(false, true)) {
      throw new IllegalStateException("a connection starts once");
    }
    thread.start();
  }

  /**
   * Looks again at all ports, those that did not answer included, perhaps for another rig. While a
   * rig is connected, this waits until it is lost.
   */
  public void searchAgain(RigSelector forRig) {
    seeker.searchAgain(forRig);
  }

  /**
   * Sends a command, after those that were given before.
   *
   * @return what the rig answers, completed on the listener's thread. It fails with a {@link
   *     Trouble} when the command was lost twice, however late answers are, and with a {@link
   *     LinkLostException} when no rig is connected or it goes away. Its dependents must not wait
   *     for another command.
   */
  public CompletableFuture<Result> send(RigCommand command) {
    synchronized (commandLock) {
      if (writer.isEmpty()) {
        return CompletableFuture.failedFuture(new LinkLostException(Words.say("rig.lost.notSent")));
      }
      CompletableFuture<Result> result = new CompletableFuture<>();
      commands.add(command, result);
      sendDue();
      return result;
    }
  }

  /**
   * Lets go of the rig, has something done on the thread of this connection, and looks for the rig
   * again. A rig that was connected is told as lost meanwhile.
   *
   * @param errand ends soon once the connection is closed; it must not throw
   */
  public void withoutRig(Runnable errand) {
    errands.add(errand);
  }

  /** Ends the connection and lets go of the port. May be called twice. */
  @Override
  public void close() {
    closed.countDown();
    if (!started.get() || Thread.currentThread() == thread) {
      return;
    }
    try {
      thread.join(CLOSE_WAIT_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    boolean ended = false;
    while (!ended && isOpen()) {
      try {
        searchAndServe();
        ended = true;
      } catch (RuntimeException | Error fault) {
        // Whoever waits for lines must not wait for ever, and the rig goes on sending.
        change(LinkState.LOST, Words.say("rig.lost.fault"), Optional.empty(), Optional.empty());
        // The port that it was on answers, and is looked at again.
        seeker.forgetPorts();
        thread.getUncaughtExceptionHandler().uncaughtException(thread, fault);
        pause.nanos(PAUSE_NANOS);
      }
    }
  }

  private void searchAndServe() {
    Optional<OpenRig> lost = Optional.empty();
    while (isOpen()) {
      doErrands();
      Optional<RigSeeker.Found> found =
          lost.isPresent()
              ? seeker.findBack(lost.get(), commands.nextSequence())
              : seeker.findFirst();
      if (found.isPresent()) {
        lost = Optional.of(serve(found.get()));
      }
    }
  }

  private void doErrands() {
    for (Runnable next = errands.poll(); next != null && isOpen(); next = errands.poll()) {
      next.run();
      // Whatever answered wrongly before may be a rig now.
      seeker.forgetPorts();
    }
  }

  /** Reads and writes until the rig is lost or the connection closed. */
  private OpenRig serve(RigSeeker.Found found) {
    OpenRig rig = found.rig();
    RigService service = new RigService(rig, commands, listener, nanos);
    boolean lost = false;
    try (LineWriter to = new LineWriter(rig.link(), nanos)) {
      commands.continueAt(rig.nextSequence(), rig.greeting().board().rate());
      connect(to);
      change(
          found.state(),
          found.sentence(),
          Optional.of(rig.greeting()),
          Optional.of(found.report()));
      service.run(to, this::sendDue, this::isServing);
    } catch (LinkLostException gone) {
      lost = true;
      disconnect(gone);
      change(LinkState.LOST, gone.getMessage(), Optional.of(service.greeting()), Optional.empty());
    } finally {
      if (!lost) {
        disconnect(new LinkLostException(Words.say("rig.lost.closed")));
        rig.link().close();
        if (isOpen()) {
          change(
              LinkState.LOST,
              Words.say("rig.lost.lent"),
              Optional.of(service.greeting()),
              Optional.empty());
        }
      }
    }
    return service.asItIsNow();
  }

  private void connect(LineWriter to) {
    synchronized (commandLock) {
      writer = Optional.of(to);
      // The counters as they are, so that later losses can be told from earlier ones.
      commands.add(new RigCommand.AskStatus(), new CompletableFuture<>());
    }
  }

  private void disconnect(LinkLostException why) {
    synchronized (commandLock) {
      writer = Optional.empty();
    }
    commands.failAll(why);
  }

  /** Sends the command whose turn it is, if any; by whoever notices first. */
  private void sendDue() {
    synchronized (commandLock) {
      writer.ifPresent(to -> commands.next(nanos.getAsLong()).ifPresent(to::write));
    }
  }

  /** Tells a change, unless it is the same news again. */
  private void change(
      LinkState state, String sentence, Optional<Greeting> greeting, Optional<PortReport> ports) {
    boolean known =
        lastChange
            .filter(last -> last.state() == state && last.sentence().equals(sentence))
            .isPresent();
    if (!known) {
      LinkChange change = new LinkChange(nanos.getAsLong(), state, sentence, greeting, ports);
      lastChange = Optional.of(change);
      listener.changed(change);
    }
  }

  /** Whether rigs are to be looked for and served now. */
  private boolean isServing() {
    return isOpen() && errands.isEmpty();
  }

  private boolean isOpen() {
    return closed.getCount() > 0;
  }

  @SuppressWarnings("ReturnValueIgnored") // The caller looks next whether it is closed.
  private void waitForClose(long forNanos) {
    try {
      closed.await(forNanos, TimeUnit.NANOSECONDS);
    } catch (InterruptedException interrupted) {
      closed.countDown();
    }
  }
}
