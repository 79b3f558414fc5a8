package org.halflight.workflow;

import java.util.Set;

/**
 * What guided work shows to the person at one moment. A terminal prints it when it changes; a
 * window paints it.
 *
 * @param state what happens now
 * @param sentence what to do, or what is being done; whole sentences
 * @param remark what came of the step before, or why it is asked for again; may be empty
 * @param step counts the steps from 1; 0 where there are none
 * @param steps how many there are; 0 where there are none
 * @param progress share of the whole work that is done, 0 to 1
 * @param answers what the person may answer now
 */
public record Prompt(
    State state,
    String sentence,
    String remark,
    int step,
    int steps,
    double progress,
    Set<Answer> answers) {
  /** What happens. */
  public enum State {
    /** The work waits for the person. */
    ASKING,
    /** The rig is at work; the person waits. */
    WORKING,
    /** The work is over. */
    OVER
  }

  public Prompt {
    answers = Set.copyOf(answers);
  }
}
