package org.halflight.bench;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.LongSupplier;
import org.halflight.rig.RigEvent;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionEvent.NotDone.Why;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;

/**
 * A session at work: each event reaches the session file first and only then the session, so that
 * what counts here and what stands in the file never differ. Only the lines of the light meter are
 * left out, of which nothing is computed: see {@link LeftOutLines}. Not safe for use by several
 * threads.
 *
 * <p>Lines of the rig that the disk does not take, and what the program notes itself, wait in
 * memory and count once they are written, in their order. An act of the person that it does not
 * take does not count: whoever did it is told, and does it again.
 */
public final class Workbench implements AutoCloseable {
  /** Lines of many minutes; what comes on top is lost, and known to be by the rig's own numbers. */
  static final int MOST_WAITING = 100_000;

  /** A time that no session of ours lasts, in nanoseconds: ten years. */
  private static final long LONGEST_NANOS = 315_360_000L * 1_000_000_000L;

  /**
   * An event that was taken, and what it brought.
   *
   * @param event as it stands in the file
   */
  public record Handled(BenchEvent event, SessionReducer.Brought brought) {}

  private final SessionFile file;
  private final LongSupplier nanos;
  private final long startNanos;
  private final SessionReducer fold = new SessionReducer();
  private final LeftOutLines leftOut = new LeftOutLines();

  /** Lines and notes that the disk has not taken yet. */
  private final Deque<BenchEvent> waiting = new ArrayDeque<>();

  /** What was taken, and told to nobody yet. */
  private final List<Handled> untold = new ArrayList<>();

  /** What came of forcing an event to the disk that was taken all the same. */
  private Optional<Trouble> unsaid = Optional.empty();

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
    bench.onEvent(begins);
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
    Workbench bench = new Workbench(file, nanos, Math.max(0, Math.min(gone, LONGEST_NANOS)));
    bench.fold.onEvents(before);
    // This ends whatever was under way, here and in every replay of the file.
    bench.onEvent(new BenchEvent.Mark(bench.now(), begins.kind(), begins.values()));
    return bench;
  }

  /** Host time in nanoseconds since the session began. */
  public long now() {
    return nanos.getAsLong() - startNanos;
  }

  /**
   * Keeps an event, then works it out.
   *
   * @throws Trouble when the disk does not take it: a line waits then, an act does not count
   */
  public SessionReducer.Brought onEvent(BenchEvent event) {
    List<RigEvent> said = new ArrayList<>();
    List<SessionEvent> news = new ArrayList<>();
    for (Handled handled : handleEach(event)) {
      said.addAll(handled.brought().said());
      news.addAll(handled.brought().news());
    }
    return new SessionReducer.Brought(said, news);
  }

  /**
   * Keeps an event like {@link #onEvent}.
   *
   * @return it, and in front of a line those that had to wait for the disk
   */
  public List<Handled> handleEach(BenchEvent event) {
    boolean isLine = !(event instanceof BenchEvent.Mark);
    if (isLine && leftOut.has(event, waiting.isEmpty() && untold.isEmpty())) {
      return List.of(new Handled(event, fold.onEvent(event)));
    }
    if (isRefusable(event)) {
      sayUnsaid();
      writeWaiting();
      return List.of(workOut(file.add(event)));
    }
    if (event instanceof BenchEvent.Received) {
      leftOut.mark(event.hostNanos()).ifPresent(waiting::add);
    }
    if (!isLine || waiting.size() < MOST_WAITING) {
      waiting.add(event);
    }
    if (isLine) {
      sayUnsaid();
    }
    try {
      writeWaiting();
    } catch (Trouble trouble) {
      if (isLine && untold.isEmpty()) {
        throw trouble;
      }
      // Of what the program notes itself nobody has to be told: the next line says it.
      return isLine ? allUntold() : List.of();
    }
    return isLine ? allUntold() : List.of(untold.remove(untold.size() - 1));
  }

  /** Whether somebody is there who can do it again. */
  private static boolean isRefusable(BenchEvent event) {
    return event instanceof BenchEvent.Mark mark
        && (mark.kind().equals(Marks.BEGINS)
            || UndoMarks.isOne(mark)
            || Marks.input(mark).orElse(null) instanceof SessionInput.UserAction);
  }

  private List<Handled> allUntold() {
    List<Handled> all = List.copyOf(untold);
    untold.clear();
    return all;
  }

  private void writeWaiting() {
    while (!waiting.isEmpty()) {
      BenchEvent written = file.add(waiting.peek());
      waiting.remove();
      untold.add(workOut(written));
    }
  }

  private Handled workOut(BenchEvent written) {
    SessionReducer.Brought brought = fold.onEvent(written);
    if (brought.news().stream().anyMatch(SessionEvent.Settled.class::isInstance)) {
      try {
        file.settle();
      } catch (Trouble trouble) {
        // It stands in the file and counts; its news must not be lost for this.
        unsaid = Optional.of(trouble);
      }
    }
    return new Handled(written, brought);
  }

  private void sayUnsaid() {
    Optional<Trouble> trouble = unsaid;
    unsaid = Optional.empty();
    if (trouble.isPresent()) {
      throw trouble.get();
    }
  }

  /** Keeps and works out something that the host or the person did. */
  public List<SessionEvent> handle(SessionInput input) {
    return onEvent(Marks.of(now(), input)).news();
  }

  /** From now on the file does without the lines of the light meter, or takes all. */
  void leavesOut(boolean linesOfTheMeter) {
    leftOut.are(linesOfTheMeter);
  }

  /** Undoes the last act of the person that counts; the mark of it is added to the file. */
  public List<SessionEvent> undo() {
    return turn(fold.toUndo(), true, Why.NOTHING_TO_UNDO);
  }

  /** Takes the last undo back, as long as nothing was done since. */
  public List<SessionEvent> redo() {
    return turn(fold.toRedo(), false, Why.NOTHING_TO_REDO);
  }

  private List<SessionEvent> turn(OptionalLong mark, boolean undo, Why otherwise) {
    if (mark.isEmpty()) {
      boolean old = !file.form().numbersMarks();
      return List.of(new SessionEvent.NotDone(old ? Why.SESSION_OF_OLD_FORM : otherwise));
    }
    long number = mark.getAsLong();
    return onEvent(undo ? UndoMarks.undo(now(), number) : UndoMarks.redo(now(), number)).news();
  }

  /** The person does not count the last firing of the run; says so where there is none. */
  public List<SessionEvent> reject(String reason) {
    return fold.session()
        .toReject()
        .map(last -> handle(new SessionInput.FiringRejected(last.key(), reason)))
        .orElseGet(() -> List.of(new SessionEvent.NotDone(Why.NOTHING_TO_REJECT)));
  }

  /**
   * A rejected firing of the session gets another reason; says so where there is no such firing.
   *
   * @param number of the firing; empty for the last one that is rejected
   */
  public List<SessionEvent> changeReason(OptionalInt number, String reason) {
    return fold.session().results().stream()
        .filter(firing -> firing.rejection().isPresent())
        .filter(firing -> number.isEmpty() || firing.number() == number.getAsInt())
        .reduce((first, second) -> second)
        .map(firing -> handle(new SessionInput.ReasonChanged(firing.key(), reason)))
        .orElseGet(() -> List.of(new SessionEvent.NotDone(Why.NOT_REJECTED)));
  }

  /** Where the session file is. */
  public Path path() {
    return file.path();
  }

  /** What the events so far made. */
  public SessionReducer fold() {
    return fold;
  }

  /**
   * Lets go of the file; what still waits is written.
   *
   * @throws Trouble when the disk does not take it
   */
  @Override
  public void close() {
    try (file) {
      writeWaiting();
      file.settle();
    }
  }
}
