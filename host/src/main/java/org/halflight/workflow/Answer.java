package org.halflight.workflow;

/** What a person says to a {@link Prompt}. */
public enum Answer {
  /** What was asked for is done. */
  DONE,
  /** The film advance was tried after a press, and it turns. */
  TURNS,
  /** The film advance was tried after a press, and it is locked. */
  LOCKED,
  /** The camera was adjusted; the work begins again. */
  ADJUSTED,
  /** This step is left out; the next one comes. */
  SKIP,
  /** The work ends here, and the person goes on to something else. What was measured is kept. */
  LEAVE,
  /** The work ends here, and so does all that it was part of. What was measured is kept. */
  STOP
}
