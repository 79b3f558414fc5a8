package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.halflight.rig.RigMessage.Result;
import org.halflight.trouble.Trouble;

/**
 * Commands on their way to a rig, one at a time: the next goes out when the one before was
 * answered. A command without answer is repeated once under a new line counter, then given up.
 *
 * <p>It does no input or output and reads no clock: whoever owns it sends what {@link #next} and
 * {@link #repeat} give. Safe for use by several threads. Futures are completed by the thread that
 * brings the answer or the time, never under the lock.
 */
final class CommandQueue {
  /** A rig answers within this, by protocol. */
  static final long ANSWER_NANOS = TimeUnit.SECONDS.toNanos(1);

  private static final long SWEEP_STEP_NANOS = TimeUnit.MILLISECONDS.toNanos(5);

  private static final int ATTEMPTS_MOST = 2;

  private static final class Waiting {
    private final RigCommand command;
    private final CompletableFuture<Result> result;
    private final List<Integer> sequences = new ArrayList<>();
    private long sentNanos;

    Waiting(RigCommand command, CompletableFuture<Result> result) {
      this.command = command;
      this.result = result;
    }
  }

  private final Deque<Waiting> queue = new ArrayDeque<>();
  private Optional<Waiting> underWay = Optional.empty();
  private int nextSequence;

  /** Goes on counting lines from here. */
  synchronized void continueAt(int sequence) {
    nextSequence = sequence;
  }

  synchronized int nextSequence() {
    return nextSequence;
  }

  /**
   * Puts a command at the end of the queue.
   *
   * @param result is completed with its answer
   */
  synchronized void add(RigCommand command, CompletableFuture<Result> result) {
    queue.addLast(new Waiting(command, result));
  }

  /** The line of the next command, if its turn has come; it counts as sent. */
  synchronized Optional<String> next(long nanos) {
    if (underWay.isPresent() || queue.isEmpty()) {
      return Optional.empty();
    }
    underWay = Optional.of(queue.removeFirst());
    return underWay.map(waiting -> send(waiting, nanos));
  }

  /**
   * The line of the command under way once more, if its answer is overdue; it counts as sent. A
   * command whose repeat is overdue fails instead.
   */
  Optional<String> repeat(long nanos) {
    Waiting givenUp;
    synchronized (this) {
      if (underWay
          .filter(waiting -> nanos - waiting.sentNanos >= patienceNanos(waiting.command))
          .isEmpty()) {
        return Optional.empty();
      }
      if (underWay.get().sequences.size() < ATTEMPTS_MOST) {
        return underWay.map(waiting -> send(waiting, nanos));
      }
      givenUp = underWay.get();
      underWay = Optional.empty();
    }
    givenUp.result.completeExceptionally(noAnswer());
    return Optional.empty();
  }

  /** A sweep is answered at its end; what it reads at the switches may hold it up a little. */
  private static long patienceNanos(RigCommand command) {
    return command instanceof RigCommand.SweepThreshold sweep
        ? ANSWER_NANOS + 2L * (sweep.toCode() - sweep.fromCode() + 1) * SWEEP_STEP_NANOS * 5 / 4
        : ANSWER_NANOS;
  }

  private String send(Waiting waiting, long nanos) {
    int sequence = nextSequence;
    nextSequence = (nextSequence + 1) & 0xFFFF;
    waiting.sequences.add(sequence);
    waiting.sentNanos = nanos;
    return LineCodec.format(sequence, waiting.command);
  }

  /** Brings an answer; one to nothing under way is let go by. */
  void answered(int sequence, Result result) {
    Optional<Waiting> answered;
    synchronized (this) {
      answered = underWay.filter(waiting -> waiting.sequences.contains(sequence));
      if (answered.isPresent()) {
        underWay = Optional.empty();
      }
    }
    answered.ifPresent(waiting -> waiting.result.complete(result));
  }

  /** Gives up all commands. */
  void failAll(Trouble trouble) {
    List<Waiting> all;
    synchronized (this) {
      all = new ArrayList<>(queue);
      underWay.ifPresent(all::add);
      queue.clear();
      underWay = Optional.empty();
    }
    all.forEach(waiting -> waiting.result.completeExceptionally(trouble));
  }

  private static Trouble noAnswer() {
    return new Trouble(
        "The rig did not answer a command, though it was sent twice; what the command asks for was"
            + " perhaps not done. Try again; if it stays so, restart the rig.");
  }
}
