package org.halflight.bench;

import java.util.List;
import java.util.Set;

/**
 * The events of a session without the acts that were undone, and without the marks that undid them:
 * for whoever reads marks one by one. A {@link SessionReducer} sees to it itself.
 */
public final class EffectiveEvents {
  private EffectiveEvents() {}

  /** Those of the events that count. */
  public static List<BenchEvent> of(List<BenchEvent> events) {
    Set<Long> undone = undone(events);
    return events.stream().filter(event -> stands(event, undone)).toList();
  }

  private static boolean stands(BenchEvent event, Set<Long> undone) {
    return !(event instanceof BenchEvent.Mark mark)
        || !(UndoMarks.isOne(mark) || undone.contains(mark.number()));
  }

  /** Numbers of the acts that do not count at the end. */
  static Set<Long> undone(List<BenchEvent> events) {
    UserActionBook book = new UserActionBook();
    for (BenchEvent event : events) {
      if (event instanceof BenchEvent.Mark mark) {
        UndoMarks.note(mark, book);
      }
    }
    return book.undone();
  }
}
