package org.halflight.session;

import java.util.Optional;
import org.halflight.speeds.MarkedSpeed;

/** What the dial is to stand at: a marked speed, or a setting without a time. */
public sealed interface DialSetting {
  /** A marked speed. */
  record Speed(MarkedSpeed marked) implements DialSetting {}

  /** A check. */
  record Untimed(UntimedTest what) implements DialSetting {}

  /** As engraved. */
  default String label() {
    return this instanceof Speed speed ? speed.marked().label() : ((Untimed) this).what().label();
  }

  /** The marked speed, where it is one. */
  default Optional<MarkedSpeed> speed() {
    return this instanceof Speed speed ? Optional.of(speed.marked()) : Optional.empty();
  }

  /** The check, where it is one. */
  default Optional<UntimedTest> untimedTest() {
    return this instanceof Untimed untimed ? Optional.of(untimed.what()) : Optional.empty();
  }
}
