package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.bench.LightSetting;
import org.halflight.exposure.LightLevels;

/**
 * The light, and its setting while that goes on.
 *
 * @param set the light as it was set last
 * @param step where setting it stands; empty when it was never begun
 * @param progress of the measurement under way, 0 to 1
 * @param sentence what there is to know and to do
 */
public record LightView(
    Optional<LightLevels> set, Optional<LightSetting.Step> step, double progress, String sentence) {
  /** Whether the light is being set now. */
  public boolean isUnderWay() {
    return step.filter(s -> s != LightSetting.Step.DONE && s != LightSetting.Step.REFUSED)
        .isPresent();
  }
}
