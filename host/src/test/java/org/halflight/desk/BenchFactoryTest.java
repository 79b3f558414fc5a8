package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Predicate;
import org.halflight.desk.view.BenchView;
import org.halflight.fixtures.Turns;
import org.halflight.session.Phase;
import org.halflight.speeds.Dial;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions as the window begins them, without a window. Figures are of an invented shutter. */
class BenchFactoryTest {
  /** A rig at rest brings about four a second. */
  private static final int VIEWS_MOST = 5_000;

  private final BlockingQueue<BenchView> views = new LinkedBlockingQueue<>();

  @Test
  void aRunThatWasInterruptedGoesOnWithAllItsFirings(@TempDir Path folder) throws Exception {
    Path first = folder.resolve("first");
    Path second = folder.resolve("second");
    try (Archive archive = new Archive(surroundings(first), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings(first)).practice(views::add, cue -> {}, archive)) {
      loop.start();
      await(v -> v.link().isUp());
      loop.ask(
          hands ->
              hands.beginRun(RunForm.usual("mine", Phase.AS_FOUND, Dial.builtIn().get(0)).read()));
      await(v -> v.setup().isPresent());
      loop.does(BenchActions::fire);
      await(v -> v.results().size() == 1);
      copyAsAfterAPowerCut(first, second);
    }
    views.clear();
    try (Archive archive = new Archive(surroundings(second), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings(second)).practice(views::add, cue -> {}, archive)) {
      loop.start();
      BenchView view = await(v -> v.link().isUp());
      assertThat(view.results()).hasSize(1);
      assertThat(view.setup()).isPresent();
      assertThat(view.said().orElseThrow().text()).contains("interrupted at firing 2");
      loop.does(BenchActions::fire);
      assertThat(await(v -> v.results().size() == 2).results().get(1).run()).isEqualTo(1);
    }
    assertThat(sessions(second)).hasSize(1);
  }

  @Test
  void aSessionThatWasEndedIsNotGoneOnWith(@TempDir Path folder) throws Exception {
    for (int i = 0; i < 2; i++) {
      views.clear();
      try (Archive archive = new Archive(surroundings(folder), said -> {});
          BenchLoop loop =
              new BenchFactory(surroundings(folder)).practice(views::add, cue -> {}, archive)) {
        loop.start();
        assertThat(await(v -> v.link().isUp()).results()).isEmpty();
        loop.does(BenchActions::fire);
        await(v -> v.results().size() == 1);
      }
    }
    assertThat(sessions(folder)).hasSize(2);
  }

  private BenchView await(Predicate<BenchView> expected) throws InterruptedException {
    for (int seen = 0; seen < VIEWS_MOST; seen++) {
      BenchView view = Turns.next(views);
      if (expected.test(view)) {
        return view;
      }
    }
    throw new AssertionError("waited in vain");
  }

  private static void copyAsAfterAPowerCut(Path from, Path to) throws Exception {
    Files.createDirectories(to.resolve("sessions"));
    for (Path file : sessions(from)) {
      Files.copy(file, to.resolve("sessions").resolve(file.getFileName()));
    }
  }

  private static List<Path> sessions(Path folder) throws Exception {
    try (var files = Files.list(folder.resolve("sessions"))) {
      return files.filter(file -> file.toString().endsWith(".session")).toList();
    }
  }

  private static DeskSurroundings surroundings(Path folder) {
    return new DeskSurroundings(
        folder, NoPorts::new, System::nanoTime, Clock.systemUTC(), "test", 20);
  }
}
