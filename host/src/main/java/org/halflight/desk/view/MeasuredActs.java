package org.halflight.desk.view;

import java.util.EnumMap;
import java.util.Map;
import org.halflight.words.Words;

/** What was measured at a place and so cannot be undone. */
public final class MeasuredActs {
  private MeasuredActs() {}

  /** What was measured between two views, by the place where it is done. */
  public static Map<UserAction, UndoStack.Act> since(BenchView before, BenchView now) {
    Map<UserAction, UndoStack.Act> acts = new EnumMap<>(UserAction.class);
    if (now.light().set().isPresent() && !now.light().set().equals(before.light().set())) {
      acts.put(
          UserAction.TO_LIGHT,
          UndoStack.Act.lasting(Words.say("act.light"), Words.say("desk.undo.light")));
    }
    if (before.lightTest().isUnderWay()
        && !now.lightTest().isUnderWay()
        && !now.readings().isEmpty()) {
      acts.put(
          UserAction.TO_TRIED,
          UndoStack.Act.lasting(Words.say("act.lightTest"), Words.say("desk.undo.lightTest")));
    }
    return acts;
  }
}
