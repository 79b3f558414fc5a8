package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.session.PlungerReading;
import org.halflight.session.SessionInput;
import org.junit.jupiter.api.Test;

/** What Ctrl+Z undoes where. */
class PlaceUndoTest {
  private static final SessionUndo NONE = SessionUndo.NOTHING;

  private final List<String> log = new ArrayList<>();
  private final PlaceUndo undo =
      new PlaceUndo(
          new PlaceUndo.OfSession() {
            @Override
            public void undo() {
              log.add("session undo");
            }

            @Override
            public void redo() {
              log.add("session redo");
            }
          });

  @Test
  void eachPlaceUndoesItsOwnActsNewestFirst() {
    undo.done(UserAction.TO_CAMERA, act("shims: 2 to 3"), NONE);
    undo.done(UserAction.TO_CAMERA, act("handed back"), NONE);
    undo.done(UserAction.TO_CAMERAS, act("workshop"), NONE);
    assertThat(undo.undoWords(UserAction.TO_CAMERA, NONE)).contains("handed back");
    assertThat(undo.undo(UserAction.TO_CAMERA, NONE)).contains("Undone: handed back.");
    assertThat(undo.undo(UserAction.TO_CAMERA, NONE)).contains("Undone: shims: 2 to 3.");
    assertThat(undo.undoWords(UserAction.TO_CAMERA, NONE)).isEmpty();
    assertThat(undo.undo(UserAction.TO_CAMERA, NONE)).contains("There is nothing to undo.");
    assertThat(undo.redoWords(UserAction.TO_CAMERA, NONE)).contains("shims: 2 to 3");
    assertThat(undo.redo(UserAction.TO_CAMERA, NONE)).contains("Done again: shims: 2 to 3.");
    undo.done(UserAction.TO_CAMERA, act("a new one"), NONE);
    assertThat(undo.redoWords(UserAction.TO_CAMERA, NONE)).isEmpty();
    assertThat(log).containsExactly("undo handed back", "undo shims: 2 to 3", "redo shims: 2 to 3");
  }

  @Test
  void whatCannotBeUndoneSaysWhyOnceAndLetsTheActBeforeBeUndone() {
    undo.done(UserAction.TO_RIG, act("profile of March"), NONE);
    undo.done(UserAction.TO_RIG, UndoStack.Act.lasting("firmware", "It is on the board."), NONE);
    assertThat(undo.undoWords(UserAction.TO_RIG, NONE)).contains("firmware");
    assertThat(undo.undo(UserAction.TO_RIG, NONE)).contains("It is on the board.");
    assertThat(undo.redoWords(UserAction.TO_RIG, NONE)).isEmpty();
    assertThat(undo.undo(UserAction.TO_RIG, NONE)).contains("Undone: profile of March.");
  }

  @Test
  void theBenchUndoesMarksOfTheSessionAndOtherPlacesOnlyTheirOwn() {
    SessionUndo cap = session(7, new SessionInput.LensCap(true));
    assertThat(undo.undoWords(UserAction.TO_BENCH, cap)).contains("lens cap on");
    assertThat(undo.undo(UserAction.TO_BENCH, cap)).isEmpty();
    assertThat(undo.undoWords(UserAction.TO_RUN, cap)).isEmpty();
    assertThat(undo.undo(UserAction.TO_RUN, cap))
        .contains("The last act was at the bench: lens cap on. Go there (F2) to undo it.");
    assertThat(undo.undoWords(UserAction.TO_RIG, cap)).isEmpty();
    SessionUndo plunger = session(8, new SessionInput.PlungerRead(new PlungerReading(1.6, 1.65)));
    assertThat(undo.undo(UserAction.TO_TRIED, plunger)).isEmpty();
    assertThat(log).containsExactly("session undo", "session undo");
  }

  /** A choice of the practice rig and the acts at the bench are undone in the order of time. */
  @Test
  void choicesOfThePracticeRigTakeTheirTurnAtTheBench() {
    SessionUndo before = session(5, new SessionInput.LensCap(true));
    SessionUndo after = session(6, new SessionInput.LensCap(false));
    undo.done(UserAction.PRACTICE, act("the cable is out"), before);
    assertThat(undo.undoWords(UserAction.TO_BENCH, after)).contains("lens cap off");
    undo.undo(UserAction.TO_BENCH, after);
    assertThat(undo.undoWords(UserAction.TO_BENCH, before)).contains("the cable is out");
    undo.undo(UserAction.TO_BENCH, before);
    assertThat(undo.redoWords(UserAction.TO_BENCH, before)).contains("the cable is out");
    undo.redo(UserAction.TO_BENCH, before);
    assertThat(log)
        .containsExactly("session undo", "undo the cable is out", "redo the cable is out");
  }

  /** What was measured at a place cannot be undone; what was done there before can. */
  @Test
  void aTestThatWasMeasuredTakesItsTurnAmongTheActsOfItsPlace() {
    SessionUndo plunger = session(8, new SessionInput.PlungerRead(new PlungerReading(1.6, 1.65)));
    undo.done(UserAction.TO_TRIED, UndoStack.Act.lasting("leak test", "Measure again."), plunger);
    assertThat(undo.undoWords(UserAction.TO_TRIED, plunger)).contains("leak test");
    assertThat(undo.undo(UserAction.TO_TRIED, plunger)).contains("Measure again.");
    assertThat(undo.undo(UserAction.TO_TRIED, plunger)).isEmpty();
    assertThat(log).containsExactly("session undo");
  }

  private static SessionUndo session(long mark, SessionInput.UserAction act) {
    return new SessionUndo(mark, Optional.of(act), Optional.empty());
  }

  private UndoStack.Act act(String words) {
    return UndoStack.Act.of(words, () -> log.add("undo " + words), () -> log.add("redo " + words));
  }
}
