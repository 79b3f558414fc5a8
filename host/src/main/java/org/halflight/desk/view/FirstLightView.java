package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstStep;
import org.halflight.workflow.Prompt;

/**
 * First light of the rig, as far as it is.
 *
 * @param state what each step has come to; empty before it was begun
 * @param prompt what is asked for now; empty where the rig is not lent to it
 * @param step the step that it is at; empty where all are over
 * @param live what is seen now, in a line
 * @param asksForVolts whether the volts of the supply are to be typed
 */
public record FirstLightView(
    Optional<FirstLight> state,
    Optional<Prompt> prompt,
    Optional<FirstStep> step,
    String live,
    boolean asksForVolts) {
  /** Before it was begun. */
  public static final FirstLightView NOTHING =
      new FirstLightView(Optional.empty(), Optional.empty(), Optional.empty(), "", false);

  /** Whether the rig is lent to it. */
  public boolean isUnderWay() {
    return prompt.isPresent();
  }
}
