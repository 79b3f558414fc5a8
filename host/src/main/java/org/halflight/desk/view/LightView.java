package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.workflow.Prompt;

/**
 * The light, and its setting while that goes on.
 *
 * @param set the light as it was set last
 * @param prompt what there is to do or to know about setting it
 */
public record LightView(Optional<LightLevels> set, Prompt prompt) {
  /** Whether the light is being set now. */
  public boolean isUnderWay() {
    return prompt.state() != Prompt.State.OVER;
  }

  /** Whether the person is to open the shutter. */
  public boolean isAsking() {
    return prompt.state() == Prompt.State.ASKING;
  }
}
