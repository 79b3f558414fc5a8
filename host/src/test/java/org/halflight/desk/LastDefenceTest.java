package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.Message;
import org.halflight.files.FaultLog;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fault of the program on any thread of the window is said, and the work goes on. */
class LastDefenceTest {
  private final BlockingQueue<BenchView> views = new LinkedBlockingQueue<>();
  private final BlockingQueue<Message> said = new LinkedBlockingQueue<>();

  @TempDir private Path folder;

  @Test
  void theBenchThreadSaysAFaultAndGoesOn() throws Exception {
    try (Archive archive = new Archive(surroundings(), said::add);
        BenchLoop loop =
            new BenchFactory(surroundings()).practice(views::add, cue -> {}, archive)) {
      loop.start();
      await(v -> v.link().isUp());
      for (Runnable fault : List.<Runnable>of(LastDefenceTest::fails, LastDefenceTest::overflows)) {
        views.clear();
        loop.does(hands -> fault.run());
        BenchView view =
            await(v -> v.said().filter(s -> s.text().contains("at the bench")).isPresent());
        assertThat(view.said().orElseThrow().kind()).isEqualTo(Message.Kind.TROUBLE);
        assertThat(view.said().orElseThrow().text())
            .contains(FaultLog.NAME)
            .doesNotContain("Exception");
        loop.say(new Message(Message.Kind.NEWS, "and on"));
        await(v -> v.said().filter(s -> s.text().equals("and on")).isPresent());
      }
      loop.does(BenchActions::fire);
      await(v -> v.results().size() == 1);
    }
    assertThat(Files.readString(folder.resolve(FaultLog.NAME)))
        .contains("an odd thing")
        .contains("StackOverflowError");
    // Every line has reached its file, and the session was ended in order.
    List<BenchEvent> events = SessionFile.read(session()).events();
    assertThat(
            events.stream()
                .filter(BenchEvent.Mark.class::isInstance)
                .map(BenchEvent.Mark.class::cast)
                .map(BenchEvent.Mark::kind))
        .last()
        .isEqualTo("ends");
  }

  @Test
  void aWindowThatCannotShowDoesNotKeepLinesFromTheirFile() throws Exception {
    CompletableFuture<Integer> shown = new CompletableFuture<>();
    int[] calls = new int[1];
    try (Archive archive = new Archive(surroundings(), said::add);
        BenchLoop loop =
            new BenchFactory(surroundings())
                .practice(
                    view -> {
                      if (view.link().isUp() && calls[0]++ > 20) {
                        shown.complete(calls[0]);
                      }
                      throw new IllegalStateException("an odd thing");
                    },
                    cue -> {},
                    archive)) {
      loop.start();
      assertThat(shown.get(30, TimeUnit.SECONDS)).isGreaterThan(20);
    }
    List<BenchEvent> events = SessionFile.read(session()).events();
    assertThat(events).anyMatch(BenchEvent.Received.class::isInstance);
    assertThat(((BenchEvent.Mark) events.get(events.size() - 1)).kind()).isEqualTo("ends");
  }

  @Test
  void theRecordsThreadSaysAFaultAndGoesOn() throws Exception {
    CompletableFuture<Integer> answer = new CompletableFuture<>();
    try (Archive archive = new Archive(surroundings(), said::add)) {
      archive.ask(
          record -> {
            throw new IllegalStateException("an odd thing");
          },
          nothing -> {});
      archive.ask(
          record -> {
            throw new StackOverflowError();
          },
          nothing -> {});
      archive.ask(record -> record.cameras().size(), answer::complete);
      assertThat(answer.get(30, TimeUnit.SECONDS)).isZero();
    }
    assertThat(said).hasSize(2);
    assertThat(said.take().text()).contains("in the record").contains(FaultLog.NAME);
  }

  private static void fails() {
    throw new IllegalStateException("an odd thing");
  }

  private static void overflows() {
    throw new StackOverflowError();
  }

  private Path session() throws Exception {
    try (var files = Files.list(folder.resolve("sessions"))) {
      return files.filter(file -> file.toString().endsWith(".session")).findFirst().orElseThrow();
    }
  }

  private BenchView await(Predicate<BenchView> expected) throws InterruptedException {
    while (true) {
      BenchView view = views.poll(30, TimeUnit.SECONDS);
      if (view == null) {
        throw new AssertionError("waited in vain");
      }
      if (expected.test(view)) {
        return view;
      }
    }
  }

  private DeskSurroundings surroundings() {
    return new DeskSurroundings(
        folder, NoPorts::new, System::nanoTime, Clock.systemUTC(), "test", 20);
  }
}
