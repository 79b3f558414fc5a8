package org.halflight.rig;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.LongSupplier;
import org.halflight.link.LinkLostException;
import org.halflight.link.LinkState;
import org.halflight.link.PortCandidate;
import org.halflight.link.Ports;
import org.halflight.rig.RigMessage.Greeting;
import org.halflight.rig.RigMessage.Result;
import org.halflight.trouble.Trouble;

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
  /** A rig that was silent for three beats is lost, by protocol. */
  static final long SILENCE_NANOS = TimeUnit.MICROSECONDS.toNanos(3 * 262_144);

  /**
   * Time alone does not make a silence: after the computer slept, what came meanwhile must be read
   * first.
   */
  private static final int SILENT_READS = 4;

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

  private final Ports ports;
  private final RigFinder finder;
  private final Listener listener;
  private final LongSupplier nanos;
  private final Pause pause;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final AtomicBoolean started = new AtomicBoolean();
  private final AtomicBoolean lookAfresh = new AtomicBoolean();
  private final CommandQueue commands = new CommandQueue();
  private final Thread thread = new Thread(this::run, "halflight-rig-reader");

  /** Guards {@link #writer} together with what is put into {@link #commands}. */
  private final Object commandLock = new Object();

  /** Present while a rig is connected. */
  private Optional<LineWriter> writer = Optional.empty();

  private volatile RigSelector wish;

  // Of the reader thread only.
  private final byte[] buffer = new byte[4096];
  private final Set<PortCandidate> settled = new HashSet<>();
  private Optional<LinkChange> lastChange = Optional.empty();

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   */
  public RigConnection(Ports ports, RigSelector wish, Listener listener, LongSupplier nanos) {
    this(ports, wish, listener, nanos, Optional.empty());
  }

  RigConnection(
      Ports ports, RigSelector wish, Listener listener, LongSupplier nanos, Optional<Pause> pause) {
    this.ports = ports;
    this.wish = wish;
    this.listener = listener;
    this.nanos = nanos;
    this.pause = pause.orElse(this::waitForClose);
    finder = new RigFinder(ports, nanos);
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
    wish = forRig;
    lookAfresh.set(true);
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
        return CompletableFuture.failedFuture(
            new LinkLostException(
                "No rig is connected, so the command was not sent. Try again when it is."));
      }
      CompletableFuture<Result> result = new CompletableFuture<>();
      commands.add(command, result);
      sendDue();
      return result;
    }
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
        change(
            LinkState.LOST,
            "The program lost the rig because of a fault of its own. What came before is kept; the"
                + " rig is looked for again.",
            Optional.empty());
        // The port that it was on answers, and is looked at again.
        settled.clear();
        thread.getUncaughtExceptionHandler().uncaughtException(thread, fault);
        pause.nanos(PAUSE_NANOS);
      }
    }
  }

  private void searchAndServe() {
    change(LinkState.SEARCHING, lookingFor(), Optional.empty());
    Optional<Found> found = findFirst();
    while (found.isPresent()) {
      OpenRig lost = serve(found.get());
      found = isOpen() ? findBack(lost) : Optional.empty();
    }
  }

  /** A rig, and how to tell of it. */
  private record Found(OpenRig rig, LinkState state, String sentence) {
    static Found first(OpenRig rig) {
      return new Found(rig, LinkState.CONNECTED, capital(rig) + "is connected.");
    }

    static Found back(OpenRig rig, Greeting known) {
      boolean ranOn =
          rig.greeting().bootCount() == known.bootCount() && rig.greeting().ticks() > known.ticks();
      return new Found(
          rig,
          LinkState.BACK,
          capital(rig)
              + (ranOn ? "is back; it ran on meanwhile." : "is back; it has started anew.")
              + " Firings in between were not seen; go on firing.");
    }

    private static String capital(OpenRig rig) {
      return "The " + rig.name() + " on " + rig.candidate().path() + " ";
    }
  }

  private Optional<Found> findFirst() {
    boolean tellOutcome = true;
    while (isOpen()) {
      tellOutcome |= lookAfresh.get();
      RigSearch search = search(wish, Optional.empty());
      if (search.rig().isPresent()) {
        return search.rig().map(Found::first);
      }
      // A search that left all ports out has nothing new to say.
      if (isOpen() && (tellOutcome || !search.outcomes().isEmpty())) {
        change(LinkState.SEARCHING, search.sentence(), Optional.empty());
        tellOutcome = false;
      }
      pause.nanos(PAUSE_NANOS);
    }
    return Optional.empty();
  }

  private String lookingFor() {
    return wish.serial().map(serial -> "Looking for the rig " + serial).orElse("Looking for a rig")
        + "; opening a port restarts some boards, which takes up to 3 s.";
  }

  /** Looks at ports, leaving out those that are settled, but not the one where the rig was. */
  private RigSearch search(RigSelector wanted, Optional<String> lastPath) {
    if (lookAfresh.getAndSet(false)) {
      settled.clear();
    }
    try {
      settled.retainAll(ports.candidates());
    } catch (Trouble cannotList) {
      // The search meets the same trouble and has its sentence.
      settled.clear();
    }
    RigSearch search =
        finder.search(
            wanted,
            candidate ->
                settled.contains(candidate)
                    && lastPath.filter(path -> path.equals(candidate.path())).isEmpty(),
            this::isOpen);
    search.outcomes().stream()
        .filter(PortOutcome::isSettled)
        .forEach(outcome -> settled.add(outcome.candidate()));
    return search;
  }

  /** Looks for the same rig until it is back; empty when the connection was closed meanwhile. */
  private Optional<Found> findBack(OpenRig lost) {
    Greeting known = lost.greeting();
    // A reset leaves the link whole, and opening the port anew would only reset the board again.
    Optional<OpenRig> answers = finder.askAgain(lost, commands.nextSequence(), this::isOpen);
    RigSelector wanted = RigSelector.again(known, wish.everyPort());
    if (answers.isPresent() && answers.get().greeting().serial().equals(known.serial())) {
      return answers.map(rig -> Found.back(rig, known));
    }
    lost.link().close();
    // Nobody watched the ports while the rig was there: any of them may be new.
    settled.clear();
    while (isOpen()) {
      if (lookAfresh.get()) {
        wanted = wish;
      }
      RigSearch search = search(wanted, Optional.of(lost.candidate().path()));
      if (search.rig().isPresent()) {
        OpenRig rig = search.rig().get();
        boolean same = RigSelector.again(known, true).choose(List.of(rig)).isPresent();
        return Optional.of(same ? Found.back(rig, known) : Found.first(rig));
      }
      boolean othersAnswered =
          search.outcomes().stream()
              .anyMatch(outcome -> outcome.finding() == PortOutcome.Finding.RIG);
      if (isOpen() && othersAnswered) {
        change(LinkState.LOST, search.sentence(), Optional.of(known));
      }
      pause.nanos(PAUSE_NANOS);
    }
    return Optional.empty();
  }

  /** Reads and writes until the rig is lost or the connection closed. */
  private OpenRig serve(Found found) {
    OpenRig rig = found.rig();
    Service service = new Service(rig);
    boolean lost = false;
    try (LineWriter to = new LineWriter(rig.link(), nanos)) {
      commands.continueAt(rig.nextSequence(), rig.greeting().board().rate());
      connect(to);
      change(found.state(), found.sentence(), Optional.of(rig.greeting()));
      service.run(to);
    } catch (LinkLostException gone) {
      lost = true;
      disconnect(gone);
      change(LinkState.LOST, gone.getMessage(), Optional.of(service.greeting));
    } finally {
      if (!lost) {
        disconnect(new LinkLostException("The connection to the rig was closed."));
        rig.link().close();
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

  /** One stretch of being connected. Of the reader thread. */
  private final class Service {
    private final OpenRig rig;
    private Greeting greeting;
    private long lastHeardNanos = nanos.getAsLong();
    private int readsSinceHeard;

    Service(OpenRig rig) {
      this.rig = rig;
      greeting = rig.greeting();
    }

    void run(LineWriter to) {
      // Told again as it was, times included: it came before the rig was known to be the one.
      rig.lines().forEach(this::publish);
      try {
        while (isOpen()) {
          step(to);
        }
      } finally {
        to.drainSent(this::publish);
      }
    }

    private void step(LineWriter to) {
      // Outside the lock: giving up a command runs whatever waits for it.
      commands.overdue(nanos.getAsLong()).ifPresent(to::write);
      sendDue();
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
          "The "
              + RigNames.of(greeting)
              + " on "
              + rig.candidate().path()
              + " stopped answering. What it sent before is kept; a firing under way does not"
              + " count. Check the cable; it goes on by itself when the rig is back.");
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

  /** Tells a change, unless it is the same news again. */
  private void change(LinkState state, String sentence, Optional<Greeting> greeting) {
    boolean known =
        lastChange
            .filter(last -> last.state() == state && last.sentence().equals(sentence))
            .isPresent();
    if (!known) {
      LinkChange change = new LinkChange(nanos.getAsLong(), state, sentence, greeting);
      lastChange = Optional.of(change);
      listener.changed(change);
    }
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
