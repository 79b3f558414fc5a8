package org.halflight.desk.view;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LeafExposure;
import org.halflight.session.FiringResult;
import org.halflight.session.Setting;

/** The firing whose numerals are shown. */
public sealed interface LastFiring {
  /**
   * The main closing was seen; the figure may still move a little.
   *
   * @param errorStops where a speed is shown
   */
  record Provisional(LeafExposure exposure, OptionalDouble errorStops, Optional<Setting> shown)
      implements LastFiring {
    public Provisional {
      Objects.requireNonNull(exposure);
      Objects.requireNonNull(errorStops);
      Objects.requireNonNull(shown);
    }
  }

  /** It is over. */
  record Settled(FiringResult result) implements LastFiring {
    public Settled {
      Objects.requireNonNull(result);
    }
  }
}
