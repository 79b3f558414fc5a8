package org.halflight.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.halflight.link.LinkLostException;
import org.halflight.rig.RigMessage.Result;
import org.halflight.signal.Channel;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;

class CommandQueueTest {
  private static final long SECOND = 1_000_000_000L;
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

  @Test
  void repeatsOnceUnderANewNumberAndThenGivesUp() {
    CompletableFuture<Result> result = add(STATUS);
    CompletableFuture<Result> next = add(PING);
    due(0);

    assertThat(due(SECOND - 1)).isEmpty();
    assertThat(due(SECOND)).hasValueSatisfying(s -> assertThat(s).startsWith("s 0001#"));
    assertThat(due(2 * SECOND - 1)).isEmpty();
    assertThat(due(2 * SECOND)).hasValueSatisfying(line -> assertThat(line).startsWith("p 0002"));
    assertThat(result.handle((value, trouble) -> trouble).join())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("did not answer a command");
    assertThat(next).isNotDone();
  }

  /** A sweep of 513 codes there and back at 5 ms each takes 5.1 s. */
  @Test
  void waitsForASweepToItsEnd() {
    CompletableFuture<Result> result =
        add(new RigCommand.SweepThreshold(Channel.CENTRE_LOW, 0x100, 0x300));
    due(0);

    assertThat(due(6 * SECOND)).isEmpty();
    assertThat(due(8 * SECOND)).hasValueSatisfying(s -> assertThat(s).startsWith("w 0001"));
    assertThat(result).isNotDone();
  }

  @Test
  void takesALateAnswerToTheFirstOfTwoAttempts() {
    CompletableFuture<Result> result = add(STATUS);
    due(0);
    due(SECOND);
    queue.answered(0, Result.DONE);

    assertThat(result).isCompletedWithValue(Result.DONE);
    // The answer to the second attempt finds nothing under way.
    queue.answered(1, Result.DONE);
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
    queue.continueAt(0xFFFF);
    CompletableFuture<Result> first = add(STATUS);
    due(0);
    queue.answered(0xFFFF, Result.DONE);
    CompletableFuture<Result> second = add(STATUS);

    assertThat(due(1)).hasValueSatisfying(line -> assertThat(line).startsWith("s 0000#"));
    assertThat(first).isDone();
    assertThat(second).isNotDone();
  }

  private Optional<String> due(long nanos) {
    return queue.repeat(nanos).or(() -> queue.next(nanos));
  }

  private CompletableFuture<Result> add(RigCommand command) {
    CompletableFuture<Result> result = new CompletableFuture<>();
    queue.add(command, result);
    return result;
  }
}
