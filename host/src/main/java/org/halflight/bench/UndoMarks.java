package org.halflight.bench;

import java.util.Map;
import java.util.OptionalLong;
import org.halflight.session.SessionInput;

/**
 * The marks that undo an act of the person and that take this back. Each names another mark by its
 * number; both are only ever added.
 */
final class UndoMarks {
  static final String UNDO = "undo";
  static final String REDO = "redo";

  private static final String OF = "of";

  private UndoMarks() {}

  /** Undoes the act of a number. */
  static BenchEvent.Mark undo(long hostNanos, long act) {
    return new BenchEvent.Mark(hostNanos, UNDO, Map.of(OF, String.valueOf(act)));
  }

  /** Takes back the undo mark of a number. */
  static BenchEvent.Mark redo(long hostNanos, long undo) {
    return new BenchEvent.Mark(hostNanos, REDO, Map.of(OF, String.valueOf(undo)));
  }

  static boolean isOne(BenchEvent.Mark mark) {
    return mark.kind().equals(UNDO) || mark.kind().equals(REDO);
  }

  /** The number that such a mark names; empty where it names none. */
  static OptionalLong of(BenchEvent.Mark mark) {
    try {
      return OptionalLong.of(Long.parseLong(mark.values().getOrDefault(OF, "")));
    } catch (NumberFormatException none) {
      return OptionalLong.empty();
    }
  }

  /** Whether a mark is an act that can be undone: it must have a number to be named by. */
  static boolean isAct(BenchEvent.Mark mark) {
    return mark.number() > 0 && Marks.input(mark).orElse(null) instanceof SessionInput.UserAction;
  }

  /**
   * Takes a mark down in the book, if it is an act, or undoes or redoes one.
   *
   * @return the act that an undo or redo mark is about; empty where it changes nothing
   */
  static OptionalLong note(BenchEvent.Mark mark, UserActionBook book) {
    OptionalLong named = isOne(mark) ? of(mark) : OptionalLong.empty();
    if (named.isPresent()) {
      long of = named.getAsLong();
      if (mark.kind().equals(UNDO)) {
        return book.undo(mark.number(), of) ? OptionalLong.of(of) : OptionalLong.empty();
      }
      return book.redo(of) ? book.actOf(of) : OptionalLong.empty();
    }
    if (isAct(mark)) {
      book.act(mark.number());
    }
    return OptionalLong.empty();
  }
}
