package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LeafExposure;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;

/** The firing whose numerals are shown. */
public sealed interface LastFiring {
  /**
   * The main closing was seen; the figure may still move a little.
   *
   * @param errorStops where a speed is shown
   */
  record Provisional(LeafExposure exposure, OptionalDouble errorStops, Optional<DialSetting> shown)
      implements LastFiring {}

  /** It is over. */
  record Settled(FiringResult result) implements LastFiring {}

  /**
   * It is over, and was a trial of the linkage between film advance and release.
   *
   * @param linkage with this trial as the newest
   */
  record Trial(FiringResult result, AdvanceTiming linkage) implements LastFiring {}

  /** The firing, once it is over. */
  default Optional<FiringResult> over() {
    return this instanceof Settled settled
        ? Optional.of(settled.result())
        : this instanceof Trial trial ? Optional.of(trial.result()) : Optional.empty();
  }

  /** The linkage, where it was a trial of it. */
  default Optional<AdvanceTiming> tried() {
    return this instanceof Trial trial ? Optional.of(trial.linkage()) : Optional.empty();
  }
}
