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

  /** Whether the last that was undone was a choice of the practice rig. */
  private boolean practiceUndone;

  /**
   * @param session undoes and redoes acts of the session
   */
  public PlaceUndo(OfSession session) {
    this.session = session;
  }

  /** Something was done at a place. */
  public void done(UserAction place, UndoStack.Act act) {
    at(place).done(act);
  }

  /** Something was chosen on the practice rig, which belongs to the bench. */
  public void chosen(UndoStack.Act act, SessionUndo now) {
    done(UserAction.PRACTICE, act.after(now.mark()));
  }

  /** What was done at a place is not to be undone any more: it was another bench. */
  public void forget(UserAction place) {
    stacks.remove(place);
    practiceUndone = false;
  }

  /** What would be undone at a place, in a few words. */
  public Optional<String> undoWords(UserAction place, SessionUndo now) {
    return isOfPractice(place, now)
        ? words(at(UserAction.PRACTICE).toUndo())
        : isOfSession(place)
            ? now.undo().filter(act -> belongs(act, place)).map(UserActionWords::of)
            : words(at(place).toUndo());
  }

  /** What would be done again at a place, in a few words. */
  public Optional<String> redoWords(UserAction place, SessionUndo now) {
    return redoesPractice(place, now)
        ? words(at(UserAction.PRACTICE).toRedo())
        : isOfSession(place)
            ? now.redo().filter(act -> belongs(act, place)).map(UserActionWords::of)
            : words(at(place).toRedo());
  }

  /**
   * Undoes what was done last at a place.
   *
   * @return what there is to say; empty where the session says it
   */
  public Optional<String> undo(UserAction place, SessionUndo now) {
    practiceUndone = isOfPractice(place, now);
    if (practiceUndone) {
      return Optional.of(at(UserAction.PRACTICE).undo());
    }
    if (!isOfSession(place)) {
      return Optional.of(at(place).undo());
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
    if (redoesPractice(place, now)) {
      practiceUndone = false;
      return Optional.of(at(UserAction.PRACTICE).redo());
    }
    if (!isOfSession(place)) {
      return Optional.of(at(place).redo());
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

  private boolean isOfPractice(UserAction place, SessionUndo now) {
    return isBench(place)
        && at(UserAction.PRACTICE).toUndo().filter(act -> now.mark() <= act.after()).isPresent();
  }

  private boolean redoesPractice(UserAction place, SessionUndo now) {
    return isBench(place)
        && at(UserAction.PRACTICE).toRedo().isPresent()
        && (practiceUndone || now.redo().isEmpty());
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

  private static Optional<String> words(Optional<UndoStack.Act> act) {
    return act.map(UndoStack.Act::words);
  }

  private UndoStack at(UserAction place) {
    return stacks.computeIfAbsent(place, each -> new UndoStack());
  }
}
