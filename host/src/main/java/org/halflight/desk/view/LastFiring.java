package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.Exposure;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;

/** The firing whose numerals are shown. */
public sealed interface LastFiring {
  /**
   * The main closing was seen; the figure may still move a little.
   *
   * @param errorStops where a speed is shown
   */
  record Provisional(Exposure exposure, OptionalDouble errorStops, Optional<DialSetting> shown)
      implements LastFiring {}

  /** It is over. */
  record Settled(FiringResult result) implements LastFiring {}

  /** What it is held to have been fired at. */
  default Optional<DialSetting> setting() {
    return this instanceof Settled settled
        ? settled.result().setting()
        : ((Provisional) this).shown();
  }

  /** The firing, once it is over. */
  default Optional<FiringResult> over() {
    return this instanceof Settled settled ? Optional.of(settled.result()) : Optional.empty();
  }
}
