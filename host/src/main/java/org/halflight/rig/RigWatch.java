package org.halflight.rig;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongSupplier;
import org.halflight.link.Ports;

/**
 * Watches for a rig while no session uses one: lists the ports about once a second, opens each
 * likely one once, and lets go of it again. For one thread, which never waits: it looks on another.
 */
public final class RigWatch implements AutoCloseable {
  private static final long EVERY_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final Ports ports;
  private final LongSupplier nanos;
  private final Executor elsewhere;
  private final RigFinder finder;
  private final AtomicBoolean looking = new AtomicBoolean();
  private final AtomicReference<Optional<PortReport>> news =
      new AtomicReference<>(Optional.empty());
  private volatile boolean closed;
  private long lastNanos;
  private boolean looked;
  private RigSelector wish = RigSelector.any();
  private boolean afresh;
  private boolean toldAgain;

  /** Of the looks only, one after the other. */
  private final PortMemory memory;

  private RigSearch last = new RigSearch(Optional.empty(), List.of(), List.of(), "");

  /**
   * @param nanos a clock that never runs back, in nanoseconds
   * @param elsewhere does the looking, one after the other
   */
  public RigWatch(Ports ports, LongSupplier nanos, Executor elsewhere) {
    this.ports = ports;
    this.nanos = nanos;
    this.elsewhere = elsewhere;
    finder = new RigFinder(ports, nanos);
    memory = new PortMemory(ports);
  }

  /**
   * Begins to look where that is due.
   *
   * @return what was found, where it is other than before
   */
  public Optional<PortReport> poll() {
    long now = nanos.getAsLong();
    boolean due = !looked || afresh || toldAgain || now - lastNanos >= EVERY_NANOS;
    if (due && !closed && looking.compareAndSet(false, true)) {
      looked = true;
      lastNanos = now;
      boolean again = afresh;
      boolean tell = afresh || toldAgain;
      afresh = false;
      toldAgain = false;
      RigSelector by = wish;
      elsewhere.execute(() -> look(by, again, tell));
    }
    return news.getAndSet(Optional.empty());
  }

  /** Tells with the next look what there is, were it the same as before. */
  public void tellAgain() {
    toldAgain = true;
  }

  /**
   * Looks at all ports again, and tells what there is, were it the same as before.
   *
   * @param everyPort whether ports that do not look like a board are opened too
   */
  public void lookAgain(boolean everyPort) {
    wish = everyPort ? RigSelector.any().onEveryPort() : RigSelector.any();
    afresh = true;
  }

  private void look(RigSelector by, boolean again, boolean tell) {
    try {
      if (again) {
        memory.forget();
      }
      RigSearch search = memory.search(finder, by, Optional.empty(), () -> !closed);
      search.rig().ifPresent(rig -> rig.link().close());
      if (!closed && (tell || !isSame(search))) {
        news.set(Optional.of(PortReport.of(ports, search)));
      }
      last = search;
    } finally {
      looking.set(false);
    }
  }

  /** A rig that was found is known afterwards, and only the sentence is another. */
  private boolean isSame(RigSearch search) {
    return search.outcomes().equals(last.outcomes())
        && search.candidates().equals(last.candidates());
  }

  /** Ends it; a look that goes on lets go of its port soon. */
  @Override
  public void close() {
    closed = true;
  }
}
