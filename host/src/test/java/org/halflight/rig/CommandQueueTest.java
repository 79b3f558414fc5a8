package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.halflight.link.LinkLostException;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;
import org.halflight.time.TickRate;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;

class CommandQueueTest {
  private static final long SECOND = 1_000_000_000L;
  private static final long TICKS = 16_000_000L;
  private static final RigCommand STATUS = new RigCommand.AskStatus();
  private static final RigCommand PING = new RigCommand.Ping(7);

  private final CommandQueue queue = new CommandQueue();

  @Test
  void sendsOneCommandAtATime() {
    CompletableFuture<Result> first = add(STATUS);
    CompletableFuture<Result> second = add(PING);

    assertThat(due(0)).hasValueSatisfying(line -> assertThat(line).startsWith("s 0000#"));
    assertThat(due(1)).isEmpty();
    queue.answered(0, Result.DONE);
    assertThat(first).isCompletedWithValue(Result.DONE);
    assertThat(due(2)).hasValueSatisfying(line -> assertThat(line).startsWith("p 0001 0007#"));
    queue.answered(1, Result.BUSY);
    assertThat(second).isCompletedWithValue(Result.BUSY);
  }

  /** The rig answers in order: a later answer tells that the one before is lost. */
  @Test
  void repeatsWhatWasLostOnceUnderANewNumberAndThenGivesUp() {
    CompletableFuture<Result> result = add(PING);
    CompletableFuture<Result> next = add(STATUS);
    due(0);

    assertThat(due(SECOND - 1)).isEmpty();
    assertThat(due(SECOND)).hasValueSatisfying(s -> assertThat(s).startsWith("s 0001#"));
    queue.answered(1, Result.DONE);
    assertThat(due(SECOND + 1)).hasValueSatisfying(s -> assertThat(s).startsWith("p 0002 0007#"));
    assertThat(due(2 * SECOND)).isEmpty();
    assertThat(due(2 * SECOND + 1)).hasValueSatisfying(s -> assertThat(s).startsWith("s 0003#"));
    assertThat(result).isNotDone();
    queue.answered(3, Result.DONE);
    assertThat(due(2 * SECOND + 2)).hasValueSatisfying(s -> assertThat(s).startsWith("s 0004#"));
    assertThat(result.handle((value, trouble) -> trouble).join())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("did not answer a command");
    assertThat(next).isNotDone();
  }

  @Test
  void waitsForALateAnswerAsLongAsTheRigTellsTheTime() {
    CompletableFuture<Result> result = add(PING);
    due(0);
    for (int second = 1; second <= 30; second++) {
      for (int i = 0; i < 4; i++) {
        queue.beat(1000L + second * 16_000_000L);
      }
      assertThat(due(second * SECOND)).hasValueSatisfying(s -> assertThat(s).startsWith("s "));
    }
    queue.answered(0, Result.DONE);
    assertThat(result).isCompletedWithValue(Result.DONE);
    // So do the answers to what was asked meanwhile.
    for (int asked = 1; asked <= 30; asked++) {
      queue.answered(asked, Result.DONE);
    }
    assertThat(due(31 * SECOND)).isEmpty();
  }

  @Test
  void givesUpARigThatTellsTheTimeAndAnswersNothing() {
    CompletableFuture<Result> result = add(PING);
    due(0);
    for (int i = 0; i <= CommandQueue.BEATS_MOST; i++) {
      assertThat(result).isNotDone();
      queue.beat(i << 22);
    }
    assertThat(due(1)).isEmpty();
    assertThat(result).isCompletedExceptionally();
  }

  /** A sweep of 513 codes there and back at 5 ms each takes 5.1 s, and is answered out of turn. */
  @Test
  void waitsForASweepToItsEndByTheTimeOfTheRig() {
    CompletableFuture<Result> result =
        add(new RigCommand.SweepThreshold(Channel.CENTRE_LOW, 0x100, 0x300));
    due(0);

    assertThat(due(6 * SECOND)).isEmpty();
    assertThat(due(8 * SECOND)).hasValueSatisfying(s -> assertThat(s).startsWith("s 0001"));
    queue.answered(1, Result.DONE);
    queue.beat(TICKS);
    queue.beat(TICKS + 7 * TICKS);
    assertThat(due(8 * SECOND + 1)).isEmpty();
    assertThat(result).isNotDone();
    queue.beat(TICKS + 8 * TICKS);
    assertThat(due(8 * SECOND + 2)).hasValueSatisfying(s -> assertThat(s).startsWith("w 0002"));
    queue.answered(2, Result.DONE);
    assertThat(result).isCompletedWithValue(Result.DONE);
  }

  @Test
  void takesALateAnswerToTheFirstOfTwoAttempts() {
    CompletableFuture<Result> result = add(PING);
    due(0);
    due(SECOND);
    queue.answered(1, Result.DONE);
    due(SECOND + 1);
    queue.answered(0, Result.DONE);

    assertThat(result).isCompletedWithValue(Result.DONE);
    // The answer to the second attempt finds nothing under way.
    queue.answered(2, Result.DONE);
    assertThat(due(3 * SECOND)).isEmpty();
  }

  @Test
  void letsAnswersToNothingGoBy() {
    CompletableFuture<Result> result = add(STATUS);
    due(0);
    queue.answered(0x77, Result.DONE);

    assertThat(result).isNotDone();
  }

  @Test
  void failsAllThatWaitWhenTheLinkIsLost() {
    CompletableFuture<Result> underWay = add(STATUS);
    CompletableFuture<Result> waiting = add(PING);
    due(0);
    LinkLostException lost = new LinkLostException("gone");
    queue.failAll(lost);

    assertThat(underWay.handle((value, trouble) -> Optional.of(trouble)).join()).contains(lost);
    assertThat(waiting.handle((value, trouble) -> Optional.of(trouble)).join()).contains(lost);
    assertThat(due(5 * SECOND)).isEmpty();
  }

  @Test
  void countsLinesOverTheWrap() {
    queue.continueAt(0xFFFF, TickRate.BOARD_16_MHZ);
    CompletableFuture<Result> first = add(STATUS);
    due(0);
    queue.answered(0xFFFF, Result.DONE);
    CompletableFuture<Result> second = add(STATUS);

    assertThat(due(1)).hasValueSatisfying(line -> assertThat(line).startsWith("s 0000#"));
    assertThat(first).isDone();
    assertThat(second).isNotDone();
  }

  private Optional<String> due(long nanos) {
    return queue.overdue(nanos).or(() -> queue.next(nanos));
  }

  private CompletableFuture<Result> add(RigCommand command) {
    CompletableFuture<Result> result = new CompletableFuture<>();
    queue.add(command, result);
    return result;
  }
}
