package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import org.halflight.export.CsvTable;
import org.halflight.export.FiringTable;
import org.halflight.fixtures.Seed;
import org.halflight.rig.LinkStatistics;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkageStep;
import org.halflight.session.Phase;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionEvent.NotDone.Why;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.session.WindState;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UndoTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  private static final List<Phase> PHASES = List.of(Phase.values());

  @TempDir private Path folder;

  @Test
  void aFiringThatWasRejectedCountsAgain() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 2)));
      at.fire(1 / 30.0);
      at.fire(1 / 30.0);
      List<FiringResult> before = List.copyOf(at.session().results());
      assertThat(at.session().shown()).contains(SIXTIETH);
      at.bench().reject("slipped");
      assertThat(at.session().results()).isNotEqualTo(before);

      LinkStatistics link = at.bench().fold().linkStatistics();
      List<SessionEvent> news = at.bench().undo();
      // Nothing of the rig is read again, which would take the time.
      assertThat(at.bench().fold().linkStatistics()).isEqualTo(link);
      assertThat(at.session().results()).isEqualTo(before);
      assertThat(at.session().shown()).contains(SIXTIETH);
      assertThat(news).contains(new SessionEvent.Changed(before.get(1)));
      assertThat(news)
          .contains(
              new SessionEvent.Undone(
                  new SessionInput.FiringRejected(before.get(1).key(), "slipped")));

      assertThat(at.bench().redo()).anyMatch(SessionEvent.Rejected.class::isInstance);
      assertThat(at.session().results().get(1).rejection()).contains("slipped");
      assertThat(at.bench().redo()).containsExactly(new SessionEvent.NotDone(Why.NOTHING_TO_REDO));
    }
  }

  @Test
  void firingsStayAndOnlyTheActGoes() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 3)));
      at.handle(new SessionInput.NextChosen());
      at.fire(1 / 30.0);
      assertThat(at.session().results().get(0).shown()).contains(SIXTIETH);
      at.bench().undo();
      assertThat(at.session().results()).hasSize(1);
      assertThat(at.session().results().get(0).shown()).contains(MarkedSpeed.parse("1/30"));
    }
  }

  @Test
  void aWindKeyThatIsUndoneGivesItsFiringBackToThePress() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 3)));
      at.handle(new SessionInput.UntimedTestChosen(UntimedTest.LINKAGE));
      at.fire(1 / 8.0);
      at.handle(new SessionInput.PressJudged(LinkageStep.STOP, WindState.LOCKED));
      assertThat(at.session().presses()).hasSize(1);

      at.bench().undo();
      assertThat(at.session().presses()).isEmpty();
      at.handle(new SessionInput.PressJudged(LinkageStep.STOP, WindState.TURNS));
      at.startAgain();

      assertThat(at.session().presses()).hasSize(1);
      assertThat(at.session().presses().get(0).wind()).isEqualTo(WindState.TURNS);
      assertThat(at.session().presses().get(0).trips()).isEqualTo(1);
    }
  }

  @Test
  void worksAcrossARestartAndAddsOnly() throws Exception {
    Path path = folder.resolve("a.session");
    try (WrittenBench at = new WrittenBench(path)) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 3)));
      at.fire(1 / 30.0);
      at.bench().reject("slipped");
      at.startAgain();
      String before = Files.readString(path);
      at.bench().undo();
      assertThat(Files.readString(path)).startsWith(before);
      assertThat(at.session().results().get(0).rejection()).isEmpty();
      at.startAgain();
      assertThat(at.session().results().get(0).rejection()).isEmpty();
      at.bench().redo();
      at.startAgain();
      assertThat(at.session().results().get(0).rejection()).contains("slipped");
    }
  }

  @Test
  void aChangedReasonKeepsTheFirstOneAndIsUndone() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 3)));
      at.fire(1 / 30.0);
      assertThat(at.bench().changeReason(OptionalInt.of(1), "slipped"))
          .containsExactly(new SessionEvent.NotDone(Why.NOT_REJECTED));
      at.bench().reject("no reason given");
      at.bench().changeReason(OptionalInt.empty(), "slipped");
      at.startAgain();
      FiringResult changed = at.session().results().get(0);
      assertThat(changed.rejection()).contains("slipped");
      assertThat(column(changed, "not_counted_because")).isEqualTo("slipped");
      assertThat(column(changed, "first_reason")).isEqualTo("no reason given");
      at.bench().undo();
      at.startAgain();
      assertThat(at.session().results().get(0).rejection()).contains("no reason given");
      assertThat(at.session().results().get(0).notes().firstReason()).isEmpty();
    }
  }

  private static String column(FiringResult firing, String name) {
    CsvTable table = FiringTable.of(List.of(firing));
    return table.rows().get(0).get(table.headings().indexOf(name));
  }

  @Test
  void onlyFiringsOfTheRunAreRejected() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_FOUND, 1)));
      for (MarkedSpeed speed : WrittenBench.SPEEDS) {
        at.fire(speed.exactSeconds());
      }
      at.handle(new SessionInput.RunBegins(WrittenBench.setup(Phase.AS_LEFT, 1)));
      at.fire(1 / 30.0);
      at.bench().reject("slipped");
      int events = SessionFile.read(folder.resolve("a.session")).events().size();
      assertThat(at.bench().reject("held"))
          .containsExactly(new SessionEvent.NotDone(Why.NOTHING_TO_REJECT));
      assertThat(SessionFile.read(folder.resolve("a.session")).events()).hasSize(events);
      assertThat(at.session().results().stream().filter(r -> r.rejection().isPresent())).hasSize(1);
    }
  }

  @Test
  void whatIsNoActIsNotUndone() {
    try (WrittenBench at = new WrittenBench(folder.resolve("a.session"))) {
      at.fire(1 / 30.0);
      assertThat(at.bench().undo()).containsExactly(new SessionEvent.NotDone(Why.NOTHING_TO_UNDO));
      at.handle(new SessionInput.LightForgotten());
      assertThat(at.bench().undo()).containsExactly(new SessionEvent.NotDone(Why.NOTHING_TO_UNDO));
      at.bench().onEvent(UndoMarks.undo(0, 2));
      at.bench().onEvent(UndoMarks.redo(0, 2));
      assertThat(at.bench().fold().damagedMarks()).isEqualTo(2);
    }
  }

  @Test
  void inASessionOfTheFirstFormNothingIs() throws Exception {
    Path path =
        Files.writeString(folder.resolve("old.session"), "halflight-session 1\nM 0 begins\n");
    SessionFile file = SessionFile.resume(path);
    try (Workbench bench =
        Workbench.resume(
            file, () -> 0, file.before(), new BenchEvent.Mark(0, Marks.BEGINS, Map.of()))) {
      bench.handle(new SessionInput.NextChosen());
      assertThat(bench.undo()).containsExactly(new SessionEvent.NotDone(Why.SESSION_OF_OLD_FORM));
    }
  }

  /** The oracle: two stacks, and a session of its own from what is left. */
  @Test
  void whateverIsUndoneIsAsIfItHadNotBeen(@Seed long seed) {
    Random random = new Random(seed);
    int undone = 0;
    for (int session = 0; session < 15; session++) {
      Path path = folder.resolve(session + ".session");
      try (WrittenBench at = new WrittenBench(path)) {
        List<Long> done = new ArrayList<>();
        List<Long> redo = new ArrayList<>();
        List<Long> gone = new ArrayList<>();
        for (int step = 0; step < 60; step++) {
          int kind = random.nextInt(16);
          if (kind < 4) {
            at.fire(WrittenBench.SPEEDS.get(random.nextInt(3)).exactSeconds());
          } else if (kind == 4) {
            at.press();
          } else if (kind == 5 && random.nextBoolean()) {
            at.startAgain();
          } else if (kind < 9) {
            if (!done.isEmpty()) {
              redo.add(done.remove(done.size() - 1));
              undone++;
            }
            at.bench().undo();
          } else if (kind == 9) {
            if (!redo.isEmpty()) {
              done.add(redo.remove(redo.size() - 1));
            }
            at.bench().redo();
          } else {
            long before = number(path);
            act(at, random);
            if (number(path) > before) {
              done.add(number(path));
              gone.addAll(redo);
              redo.clear();
            }
          }
          if (step % 10 == 9) {
            check(at, path, redo, gone, "seed " + seed + ", session " + session + ", step " + step);
          }
        }
      }
    }
    assertThat(undone).isGreaterThan(50);
  }

  private static void act(WrittenBench at, Random random) {
    switch (random.nextInt(11)) {
      case 0 ->
          at.handle(
              new SessionInput.RunBegins(
                  WrittenBench.setup(
                      PHASES.get(random.nextInt(PHASES.size())), 1 + random.nextInt(3))));
      case 1 -> at.handle(new SessionInput.SpeedChosen(WrittenBench.SPEEDS.get(random.nextInt(3))));
      case 2 ->
          at.handle(
              new SessionInput.UntimedTestChosen(
                  random.nextBoolean() ? UntimedTest.B : UntimedTest.T));
      case 3 -> at.handle(new SessionInput.NextChosen());
      case 4 -> at.handle(new SessionInput.PreviousChosen());
      case 5 -> at.handle(new SessionInput.AcceptedAsShown());
      case 6 ->
          at.handle(
              new SessionInput.FiringsMoved(
                  at.session().results().stream()
                      .filter(r -> random.nextInt(4) == 0)
                      .map(FiringResult::key)
                      .toList(),
                  WrittenBench.SPEEDS.get(random.nextInt(3))));
      case 7 -> at.handle(new SessionInput.LensCap(random.nextBoolean()));
      case 8 -> at.handle(new SessionInput.CockingLearnt(random.nextBoolean()));
      case 9 -> at.handle(new SessionInput.ClosedByHand());
      default -> at.bench().reject("invented");
    }
  }

  private static long number(Path path) {
    return SessionFile.read(path).events().stream()
        .filter(BenchEvent.Mark.class::isInstance)
        .mapToLong(event -> ((BenchEvent.Mark) event).number())
        .max()
        .orElse(0);
  }

  private static void check(
      WrittenBench at, Path path, List<Long> redo, List<Long> gone, String when) {
    List<BenchEvent> events = SessionFile.read(path).events();
    SessionReducer without = new SessionReducer();
    for (BenchEvent event : events) {
      boolean stands =
          !(event instanceof BenchEvent.Mark mark)
              || !(redo.contains(mark.number())
                  || gone.contains(mark.number())
                  || UndoMarks.isOne(mark));
      if (stands) {
        without.onEvent(event);
      }
    }
    same(at.session(), without.session(), when);
    SessionReducer all = new SessionReducer();
    all.onEvents(events);
    same(at.session(), all.session(), when);
    SessionReducer oneByOne = new SessionReducer();
    EffectiveEvents.of(events).forEach(oneByOne::onEvent);
    same(at.session(), oneByOne.session(), when);
    assertThat(all.damagedMarks()).as(when).isZero();
    assertThat(all.toUndo()).as(when).isEqualTo(at.bench().fold().toUndo());
    assertThat(all.toRedo()).as(when).isEqualTo(at.bench().fold().toRedo());
  }

  private static void same(Session one, Session other, String when) {
    assertThat(one.results()).as(when).isEqualTo(other.results());
    assertThat(one.setting()).as(when).isEqualTo(other.setting());
    assertThat(one.setup()).as(when).isEqualTo(other.setup());
    assertThat(one.runs()).as(when).isEqualTo(other.runs());
    assertThat(one.question()).as(when).isEqualTo(other.question());
    assertThat(one.isRunDone()).as(when).isEqualTo(other.isRunDone());
    assertThat(one.isCapOn()).as(when).isEqualTo(other.isCapOn());
    assertThat(one.isLearningCocking()).as(when).isEqualTo(other.isLearningCocking());
  }
}
