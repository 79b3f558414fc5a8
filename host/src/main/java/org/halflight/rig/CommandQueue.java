package org.halflight.rig;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.BoardTraits;
import org.halflight.time.TickRate;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;

/**
 * Commands on their way to a rig, one at a time: the next goes out when the one before was
 * answered. A command that was lost is repeated once under a new line counter, then given up.
 *
 * <p>A late answer is not a lost one: whoever reads may be far behind the rig. So time alone says
 * only when to ask the rig for its status. It answers in order, so a command is lost when the
 * answer to the later question comes without its own. A sweep is answered out of turn, at its end:
 * it is lost when beats behind that answer say that it should be over.
 *
 * <p>It does no input or output and reads no clock: whoever owns it sends what {@link #next} and
 * {@link #overdue} give. Safe for use by several threads. Futures are completed by the thread that
 * brings the answer or the time, never under the lock.
 */
final class CommandQueue {
  /** A rig answers within this, by protocol; behind it the status is asked for. */
  static final long ANSWER_NANOS = TimeUnit.SECONDS.toNanos(1);

  /** A minute of beats: a rig that tells the time and answers nothing at all does not hear. */
  static final int BEATS_MOST = 240;

  private static final double SWEEP_STEP_SECONDS = 0.005;

  private static final long WIRE_TICKS = 1L << 48;

  private static final int ATTEMPTS_MOST = 2;

  private static final class Waiting {
    private final RigCommand command;
    private final CompletableFuture<Result> result;
    private final List<Integer> sequences = new ArrayList<>();
    private final List<Integer> questions = new ArrayList<>();
    private OptionalLong sweepSinceTicks = OptionalLong.empty();
    private boolean questionAnswered;
    private boolean lost;
    private long dueNanos;
    private int beats;

    Waiting(RigCommand command, CompletableFuture<Result> result) {
      this.command = command;
      this.result = result;
    }

    /** It goes out, once more or for the first time. */
    void goes(int sequence) {
      sequences.add(sequence);
      questions.clear();
      questionAnswered = false;
      sweepSinceTicks = OptionalLong.empty();
      lost = false;
    }

    void questionIsAnswered() {
      questionAnswered = true;
      lost |= !(command instanceof RigCommand.SweepThreshold);
    }

    void beat(long ticks, TickRate rate) {
      beats++;
      if (!questionAnswered || !(command instanceof RigCommand.SweepThreshold sweep)) {
        return;
      }
      if (sweepSinceTicks.isEmpty()) {
        sweepSinceTicks = OptionalLong.of(ticks);
      }
      long gone = Math.floorMod(ticks - sweepSinceTicks.getAsLong(), WIRE_TICKS);
      lost |= rate.seconds(gone) > seconds(sweep);
    }

    long patienceNanos() {
      return command instanceof RigCommand.SweepThreshold sweep
          ? Math.round(1e9 * seconds(sweep))
          : ANSWER_NANOS;
    }

    /** What it reads at the switches may hold a sweep up a little; and a second for the answer. */
    private static double seconds(RigCommand.SweepThreshold sweep) {
      return 1 + 2.5 * (sweep.toCode() - sweep.fromCode() + 1) * SWEEP_STEP_SECONDS;
    }
  }

  private final Deque<Waiting> queue = new ArrayDeque<>();
  private Optional<Waiting> underWay = Optional.empty();
  private int nextSequence;
  private TickRate rate = BoardTraits.USUAL.rate();

  /** Goes on counting lines from here, to a board that counts so fast. */
  synchronized void continueAt(int sequence, TickRate boardRate) {
    nextSequence = sequence;
    rate = boardRate;
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
   * A line to send because the command under way has no answer yet: a question for the status, or
   * the command once more if it was lost; it counts as sent. A command that was lost twice fails
   * instead.
   */
  Optional<String> overdue(long nanos) {
    Waiting givenUp;
    synchronized (this) {
      if (underWay.isEmpty()) {
        return Optional.empty();
      }
      Waiting waiting = underWay.get();
      boolean deaf = waiting.beats > BEATS_MOST;
      if (!waiting.lost && !deaf) {
        return nanos - waiting.dueNanos < 0 ? Optional.empty() : Optional.of(ask(waiting, nanos));
      }
      if (!deaf && waiting.sequences.size() < ATTEMPTS_MOST) {
        return Optional.of(send(waiting, nanos));
      }
      givenUp = waiting;
      underWay = Optional.empty();
    }
    givenUp.result.completeExceptionally(noAnswer());
    return Optional.empty();
  }

  private String send(Waiting waiting, long nanos) {
    waiting.goes(nextSequence);
    waiting.dueNanos = nanos + waiting.patienceNanos();
    return line(waiting.command);
  }

  private String ask(Waiting waiting, long nanos) {
    waiting.questions.add(nextSequence);
    waiting.dueNanos = nanos + ANSWER_NANOS;
    return line(new RigCommand.AskStatus());
  }

  private String line(RigCommand command) {
    int sequence = nextSequence;
    nextSequence = (nextSequence + 1) & 0xFFFF;
    return LineCodec.format(sequence, command);
  }

  /** Brings the ticks of a beat, as they are on the wire. */
  synchronized void beat(long ticks) {
    underWay.ifPresent(waiting -> waiting.beat(ticks, rate));
  }

  /** Brings an answer; one to nothing under way is let go by. */
  void answered(int sequence, Result result) {
    Optional<Waiting> answered;
    synchronized (this) {
      answered = underWay.filter(waiting -> waiting.sequences.contains(sequence));
      if (answered.isPresent()) {
        underWay = Optional.empty();
      }
      underWay
          .filter(waiting -> waiting.questions.contains(sequence))
          .ifPresent(Waiting::questionIsAnswered);
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
    return new Trouble(Words.say("rig.lost.noAnswer"));
  }
}
