package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.Predicate;
import org.halflight.desk.view.BenchView;
import org.halflight.desk.view.RigView;
import org.halflight.fixtures.Turns;
import org.halflight.link.FakeClock;
import org.halflight.workflow.ScriptedBoard;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Firmware from the window onto a scripted board, without a window. */
class BoardUploadTest {
  private static final int VIEWS_MOST = 20_000;

  private final BlockingQueue<BenchView> views = new LinkedBlockingQueue<>();
  private final FakeClock clock = new FakeClock();
  private final ScriptedBoard board = new ScriptedBoard(clock);

  @TempDir private Path folder;

  private BenchView await(Predicate<RigView> expected) throws InterruptedException {
    for (int seen = 0; seen < VIEWS_MOST; seen++) {
      BenchView view = Turns.next(views);
      if (expected.test(view.rig())) {
        return view;
      }
    }
    throw new AssertionError("waited in vain");
  }

  private String uploaded(BenchLoop loop, Optional<String> rig) throws InterruptedException {
    loop.does(hands -> hands.rig().upload(rig));
    await(view -> view.doing() == RigView.Doing.UPLOADING);
    return await(view -> view.doing() == RigView.Doing.NOTHING).rig().sentence();
  }

  private DeskSurroundings surroundings() {
    return new DeskSurroundings(folder, () -> board, clock, Clock.systemUTC(), "test", 20);
  }

  @Test
  void showsProgressAndThenTheRigIsTheSessionsAgain() throws Exception {
    List<Double> progress = new CopyOnWriteArrayList<>();
    try (Archive archive = new Archive(surroundings(), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings())
                .rig(
                    view -> {
                      progress.add(view.rig().progress());
                      views.add(view);
                    },
                    cue -> {},
                    archive)) {
      loop.start();

      assertThat(uploaded(loop, Optional.empty())).contains("Say which rig you built");
      assertThat(uploaded(loop, Optional.of("full"))).contains("Done, written and verified");
      assertThat(board.holds("full")).isTrue();
      assertThat(progress).anyMatch(share -> share > 0.2 && share < 0.3).contains(1.0);
      await(view -> view.heading().contains("full rig"));
      String age = await(view -> true).rig().standing();
      assertThat(age).doesNotContain("firmware");
    }
  }

  @Test
  void takesThePersonsWordForARewiredRigWhenAskedTwice() throws Exception {
    board.with("small");
    try (Archive archive = new Archive(surroundings(), said -> {});
        BenchLoop loop = new BenchFactory(surroundings()).rig(views::add, cue -> {}, archive)) {
      loop.start();

      assertThat(uploaded(loop, Optional.of("full"))).contains("says that it is a small rig");
      assertThat(board.holds("small")).isTrue();
      assertThat(uploaded(loop, Optional.of("full"))).contains("Done, written and verified");
      assertThat(board.holds("full")).isTrue();
    }
  }

  @Test
  void thePracticeRigHasNoBoard() throws Exception {
    try (Archive archive = new Archive(surroundings(), said -> {});
        BenchLoop loop =
            new BenchFactory(surroundings()).practice(views::add, cue -> {}, archive)) {
      loop.start();
      loop.does(hands -> hands.rig().upload(Optional.empty()));
      await(view -> view.sentence().contains("The practice rig has no board"));
    }
  }
}
