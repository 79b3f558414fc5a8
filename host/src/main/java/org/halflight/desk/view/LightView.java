package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.light.Aim;
import org.halflight.workflow.Prompt;

/**
 * The light, its meter, and its setting while that goes on.
 *
 * @param set the light as it was set last
 * @param prompt what there is to do or to know about setting it
 * @param refusal why the light could not be set when that was tried last
 * @param aim what the light meter shows; empty while nobody looks at it
 * @param isAiming whether the light is being aimed, so that openings are no firings
 * @param screen the check of the screen that goes on or was made last
 */
public record LightView(
    Optional<LightLevels> set,
    Prompt prompt,
    Optional<String> refusal,
    Optional<Aim> aim,
    boolean isAiming,
    Optional<ScreenView> screen) {
  /** Whether the light is being set now. */
  public boolean isUnderWay() {
    return prompt.state() != Prompt.State.OVER;
  }

  /** Whether the person is to open the shutter. */
  public boolean isAsking() {
    return prompt.state() == Prompt.State.ASKING;
  }
}
