package org.halflight.workflow;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.session.CurtainStep;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;

/** What is fired of a curtain shutter in each stage of the work. Our own choice. */
public final class CurtainPlan {
  /** Firings of each speed as found, and while adjusting: few, so that gum stays where it is. */
  public static final int FOUND_FIRINGS = 3;

  private static final int STEPS_SLOWER = 2;

  private CurtainPlan() {}

  /**
   * As found: the top speed, the one two steps slower, the flash speed where it is known, and 1/8.
   * No warm-up: the first after rest is fired at the top and counts by itself.
   *
   * @param flash the fastest speed at which a flash lights the whole frame
   */
  public static List<MarkedSpeed> asFound(Dial dial, Optional<MarkedSpeed> flash) {
    Optional<MarkedSpeed> slower = Optional.of(dial.top());
    for (int i = 0; i < STEPS_SLOWER; i++) {
      slower = slower.flatMap(dial::slower);
    }
    List<MarkedSpeed> plan = new ArrayList<>();
    Stream.of(
            Optional.of(dial.top()),
            slower,
            flash.filter(dial.speeds()::contains),
            Optional.of(CurtainStep.ESCAPEMENT.speed(flash, dial.speeds())))
        .flatMap(Optional::stream)
        .filter(speed -> !plan.contains(speed))
        .forEach(plan::add);
    return plan;
  }

  /** While adjusting: all of them, the fastest first, since slit and slope are judged there. */
  public static List<MarkedSpeed> adjusting(Dial dial) {
    List<MarkedSpeed> plan = new ArrayList<>(dial.speeds());
    Collections.reverse(plan);
    return plan;
  }
}
