package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.halflight.desk.view.BenchView;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.fixtures.Turns;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.record.ProfileStore;
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

  /** The cable comes out between the act and its undoing, so the rig greets anew with it. */
  @Test
  void aProfilePutInUseIsUndoneAndDoneAgainAcrossARestartOfTheRig(@TempDir Path folder)
      throws Exception {
    Path file = folder.resolve("given.profile");
    ProfileStore store = new ProfileStore(folder);
    List<Consumer<RigActions>> turns = new CopyOnWriteArrayList<>();
    try (Archive archive = new Archive(surroundings(folder), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings(folder)).practice(views::add, cue -> {}, archive)) {
      loop.start();
      String serial = await(v -> !v.link().serial().isEmpty()).link().serial();
      ProfileStore.write(
          InventedProfiles.bare(
              new ProfiledRig(serial, "full", "1.0.0"),
              LocalDate.of(2026, 11, 30),
              new LightRange(0, 1, 2)),
          OutFiles.neverReplacing().free(file, FileKind.PROFILE));
      loop.does(
          hands -> {
            hands.rig().onDone((words, whyNot, undo, redo) -> turns.addAll(List.of(undo, redo)));
            hands.rig().importProfile(file);
          });
      await(v -> v.rig().hasProfile());
      restart(loop);
      loop.does(hands -> turns.get(0).accept(hands.rig()));
      await(v -> !v.rig().hasProfile());
      assertThat(store.newest(serial)).isEmpty();
      restart(loop);
      await(v -> v.link().isUp() && !v.rig().hasProfile());
      loop.does(hands -> turns.get(1).accept(hands.rig()));
      await(v -> v.rig().hasProfile());
      assertThat(store.newest(serial)).isPresent();
    }
  }

  private void restart(BenchLoop loop) throws InterruptedException {
    loop.does(hands -> hands.camera().orElseThrow().ports().pullCable());
    await(v -> !v.link().isUp());
    loop.does(hands -> hands.camera().orElseThrow().ports().plugIn());
    await(v -> v.link().isUp());
    views.clear();
  }

  /** An act at the bench is undone as before once the rig is back. */
  @Test
  void anActAtTheBenchIsUndoneAfterTheCableCameOutAndInAgain(@TempDir Path folder)
      throws Exception {
    try (Archive archive = new Archive(surroundings(folder), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings(folder)).practice(views::add, cue -> {}, archive)) {
      loop.start();
      await(v -> v.link().isUp());
      loop.ask(BenchActions::lensCap);
      assertThat(await(BenchView::capOn).undo().undo()).isPresent();
      restart(loop);
      loop.ask(BenchActions::undo);
      assertThat(await(v -> !v.capOn()).undo().redo()).isPresent();
      restart(loop);
      loop.ask(BenchActions::redo);
      await(BenchView::capOn);
    }
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
