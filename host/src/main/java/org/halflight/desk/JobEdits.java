package org.halflight.desk;

import java.util.function.Consumer;
import org.halflight.desk.view.UndoStack;
import org.halflight.record.Edit;

/** Changes what is noted of a camera so that each change can be undone. */
final class JobEdits {
  private final Archive archive;
  private final Consumer<UndoStack.Act> onDone;

  /**
   * @param onDone takes what was done, to be undone
   */
  JobEdits(Archive archive, Consumer<UndoStack.Act> onDone) {
    this.archive = archive;
    this.onDone = onDone;
  }

  /**
   * Makes a change.
   *
   * @param words what it is, in a few words
   * @param then shows what is noted now, whenever it was made, undone or done again
   */
  void does(String words, Edit edit, Runnable then) {
    Turn turn = new Turn(edit);
    Runnable turns = () -> archive.ask(turn::turned, done -> then.run());
    turns.run();
    onDone.accept(UndoStack.Act.of(words, turns, turns));
  }

  /** An edit and what takes it back, in turn. On the thread of the record only. */
  static final class Turn {
    private Edit next;

    Turn(Edit first) {
      next = first;
    }

    boolean turned(org.halflight.record.WorkshopRecord record) {
      next = next.on(record);
      return true;
    }
  }
}
