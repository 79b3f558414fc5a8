package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.bench.ScreenCheck;
import org.halflight.light.ScreenLight;

/**
 * The check whether the screen reaches the sensor, at one moment.
 *
 * @param turn which turn it is
 * @param white whether the whole window is to be white, or black; empty when the check is over
 * @param result what it came to, when it is over
 */
public record ScreenView(int turn, Optional<Boolean> white, Optional<ScreenLight> result) {
  static ScreenView of(ScreenCheck check) {
    return new ScreenView(check.turn(), check.shown(), check.result());
  }
}
