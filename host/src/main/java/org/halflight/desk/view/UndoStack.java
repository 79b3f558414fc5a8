package org.halflight.desk.view;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.halflight.words.Words;

/** What was done at one place of the window, the newest on top. For the window's own thread. */
public final class UndoStack {
  /**
   * An act.
   *
   * @param words what was done, in a few words
   * @param whyNot a sentence why it cannot be undone, and what to do instead; empty where it can
   * @param undo undoes it
   * @param redo does it again
   * @param after the newest mark of the session when it was done
   */
  public record Act(
      String words, Optional<String> whyNot, Runnable undo, Runnable redo, long after) {
    /** An act that can be undone. */
    public static Act of(String words, Runnable undo, Runnable redo) {
      return new Act(words, Optional.empty(), undo, redo, 0);
    }

    /** An act that cannot be undone. */
    public static Act lasting(String words, String whyNot) {
      return new Act(words, Optional.of(whyNot), () -> {}, () -> {}, 0);
    }

    /** The same act, done after a mark of the session. */
    public Act after(long mark) {
      return new Act(words, whyNot, undo, redo, mark);
    }
  }

  private final Deque<Act> done = new ArrayDeque<>();
  private final Deque<Act> undone = new ArrayDeque<>();

  /** Something was done. */
  public void done(Act act) {
    done.push(act);
    undone.clear();
  }

  /** What would be undone. */
  public Optional<Act> toUndo() {
    return Optional.ofNullable(done.peek());
  }

  /** What would be done again. */
  public Optional<Act> toRedo() {
    return Optional.ofNullable(undone.peek());
  }

  /**
   * Undoes the newest act. One that cannot be undone is let go of, so that the one before can be.
   *
   * @return what there is to say
   */
  public String undo() {
    Act act = done.poll();
    if (act == null) {
      return Words.say("news.notDone.nothing-to-undo");
    }
    if (act.whyNot().isPresent()) {
      return act.whyNot().get();
    }
    act.undo().run();
    undone.push(act);
    return Words.say("news.undone", act.words());
  }

  /**
   * Does again what was undone last.
   *
   * @return what there is to say
   */
  public String redo() {
    Act act = undone.poll();
    if (act == null) {
      return Words.say("news.notDone.nothing-to-redo");
    }
    act.redo().run();
    done.push(act);
    return Words.say("news.redone", act.words());
  }
}
