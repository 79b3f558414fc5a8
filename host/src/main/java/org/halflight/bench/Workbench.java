package org.halflight.bench;

import java.nio.file.Path;
import java.util.List;
import java.util.function.LongSupplier;
import org.halflight.session.SessionInput;
import org.halflight.session.SessionNews;

/**
 * A session at work: each event reaches the session file first and only then the session. Not safe
 * for use by several threads.
 */
public final class Workbench implements AutoCloseable {
  private final SessionFile file;
  private final LongSupplier nanos;
  private final long startNanos;
  private final BenchFold fold = new BenchFold();

  private Workbench(SessionFile file, LongSupplier nanos, long goneNanos) {
    this.file = file;
    this.nanos = nanos;
    this.startNanos = nanos.getAsLong() - goneNanos;
  }

  /**
   * Begins a new session.
   *
   * @param nanos host clock in nanoseconds that never runs back
   * @param begins the mark that says which program begins, and when
   */
  public static Workbench begin(SessionFile file, LongSupplier nanos, BenchEvent.Mark begins) {
    Workbench bench = new Workbench(file, nanos, 0);
    bench.take(begins);
    return bench;
  }

  /**
   * Goes on with a session that was stopped. What was under way then is in {@link #fold} settled,
   * and told to nobody: who keeps firings elsewhere takes the file in.
   *
   * @param before the events of the file so far
   */
  public static Workbench resume(
      SessionFile file, LongSupplier nanos, List<BenchEvent> before, BenchEvent.Mark begins) {
    long gone = before.stream().mapToLong(BenchEvent::hostNanos).max().orElse(0);
    Workbench bench = new Workbench(file, nanos, gone);
    before.forEach(bench.fold::take);
    // This ends whatever was under way, here and in every replay of the file.
    bench.take(new BenchEvent.Mark(bench.now(), begins.kind(), begins.values()));
    return bench;
  }

  /** Host time in nanoseconds since the session began. */
  public long now() {
    return nanos.getAsLong() - startNanos;
  }

  /** Keeps an event, then works it out. */
  public BenchFold.Brought take(BenchEvent event) {
    file.add(event);
    BenchFold.Brought brought = fold.take(event);
    if (brought.news().stream().anyMatch(SessionNews.Settled.class::isInstance)) {
      file.settle();
    }
    return brought;
  }

  /** Keeps and works out something that the host or the person did. */
  public List<SessionNews> tell(SessionInput input) {
    return take(Marks.of(now(), input)).news();
  }

  /** Where the session file is. */
  public Path path() {
    return file.path();
  }

  /** What the events so far made. */
  public BenchFold fold() {
    return fold;
  }

  @Override
  public void close() {
    file.settle();
    file.close();
  }
}
