package org.halflight.desk.view;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.halflight.session.SessionInput;
import org.halflight.words.UserActionWords;
import org.halflight.words.Words;

/**
 * What Ctrl+Z undoes, place by place: acts of the session at the bench, and what was done at
 * another place there. For the window's own thread.
 */
public final class PlaceUndo {
  /** Undoes and redoes acts of the session. */
  public interface OfSession {
    void undo();

    void redo();
  }

  private final Map<UserAction, UndoStack> stacks = new EnumMap<>(UserAction.class);
  private final OfSession session;

  /** Whether the last that was undone was no act of the session. */
  private boolean ownUndone;

  /**
   * @param session undoes and redoes acts of the session
   */
  public PlaceUndo(OfSession session) {
    this.session = session;
  }

  /**
   * Something was done at a place, or chosen on the practice rig, which belongs to the bench.
   *
   * @param now the session when it was done
   */
  public void done(UserAction place, UndoStack.Act act, SessionUndo now) {
    own(place).done(act.after(now.mark()));
  }

  /** What was done at a place is not to be undone any more: it was another bench. */
  public void forget(UserAction place) {
    stacks.remove(place);
  }

  /** What would be undone at a place, in a few words. */
  public Optional<String> undoWords(UserAction place, SessionUndo now) {
    return undoesOwn(place, now)
        ? own(place).toUndo().map(UndoStack.Act::words)
        : now.undo().filter(act -> belongs(act, place)).map(UserActionWords::of);
  }

  /** What would be done again at a place, in a few words. */
  public Optional<String> redoWords(UserAction place, SessionUndo now) {
    return redoesOwn(place, now)
        ? own(place).toRedo().map(UndoStack.Act::words)
        : now.redo().filter(act -> belongs(act, place)).map(UserActionWords::of);
  }

  /**
   * Undoes what was done last at a place.
   *
   * @return what there is to say; empty where the session says it
   */
  public Optional<String> undo(UserAction place, SessionUndo now) {
    ownUndone = undoesOwn(place, now);
    if (ownUndone) {
      return Optional.of(own(place).undo());
    }
    Optional<String> elsewhere = elsewhere(now.undo(), place, "desk.undo.atBench");
    if (elsewhere.isEmpty()) {
      session.undo();
    }
    return elsewhere;
  }

  /**
   * Does again what was undone last at a place.
   *
   * @return what there is to say; empty where the session says it
   */
  public Optional<String> redo(UserAction place, SessionUndo now) {
    if (redoesOwn(place, now)) {
      ownUndone = false;
      return Optional.of(own(place).redo());
    }
    Optional<String> elsewhere = elsewhere(now.redo(), place, "desk.redo.atBench");
    if (elsewhere.isEmpty()) {
      session.redo();
    }
    return elsewhere;
  }

  private static Optional<String> elsewhere(
      Optional<SessionInput.UserAction> act, UserAction place, String key) {
    return act.filter(it -> !belongs(it, place))
        .map(it -> Words.say(key, UserActionWords.of(it), KeyHints.keyName(UserAction.TO_BENCH)));
  }

  /** Acts of the session and others of the same place are undone in the order of time. */
  private boolean undoesOwn(UserAction place, SessionUndo now) {
    Optional<UndoStack.Act> newest = own(place).toUndo();
    return !isOfSession(place)
        || newest
            .filter(
                act ->
                    now.mark() <= act.after()
                        || now.undo().filter(its -> belongs(its, place)).isEmpty())
            .isPresent();
  }

  private boolean redoesOwn(UserAction place, SessionUndo now) {
    return !isOfSession(place)
        || (own(place).toRedo().isPresent() && (ownUndone || now.redo().isEmpty()));
  }

  /** At the bench all acts of a session are undone; elsewhere only what is done there. */
  private static boolean belongs(SessionInput.UserAction act, UserAction place) {
    return switch (place) {
      case TO_RUN -> act instanceof SessionInput.RunBegins;
      case TO_TRIED -> act instanceof SessionInput.PlungerRead;
      default -> true;
    };
  }

  private static boolean isOfSession(UserAction place) {
    return isBench(place) || place == UserAction.TO_RUN || place == UserAction.TO_TRIED;
  }

  private static boolean isBench(UserAction place) {
    return place == UserAction.TO_BENCH || place == UserAction.DETAILS;
  }

  private UndoStack own(UserAction place) {
    return stacks.computeIfAbsent(
        isBench(place) ? UserAction.PRACTICE : place, each -> new UndoStack());
  }
}
