package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.SessionInput;

/**
 * What can be undone in a session, and what done again.
 *
 * @param mark the number of the mark of what can be undone, which grows with every act; 0 for none
 * @param undo the act that would be undone
 * @param redo the act that would be done again
 */
public record SessionUndo(
    long mark, Optional<SessionInput.UserAction> undo, Optional<SessionInput.UserAction> redo) {
  /** Nothing was done. */
  public static final SessionUndo NOTHING = new SessionUndo(0, Optional.empty(), Optional.empty());
}
