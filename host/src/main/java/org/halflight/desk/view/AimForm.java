package org.halflight.desk.view;

import java.util.Objects;
import java.util.Optional;
import org.halflight.session.Aim;
import org.halflight.session.Measurand;
import org.halflight.speeds.Tolerances;

/**
 * What the verdicts of a run are about, as it is typed and chosen.
 *
 * @param tolerance as {@link Tolerances#find} reads it; empty for trade custom
 * @param measurand what is decided on
 * @param untilDecided whether a speed is fired until it is decided
 */
public record AimForm(String tolerance, Measurand measurand, boolean untilDecided) {
  /** Trade custom, the mean of each setting, a fixed number. */
  public static final AimForm USUAL = of(Aim.USUAL);

  public AimForm {
    Objects.requireNonNull(tolerance);
    Objects.requireNonNull(measurand);
  }

  /** The form of an aim. */
  public static AimForm of(Aim aim) {
    return new AimForm(aim.tolerances().text(), aim.measurand(), aim.untilDecided());
  }

  /** The aim; empty where the tolerance cannot be understood. */
  public Optional<Aim> read() {
    return Tolerances.find(tolerance)
        .map(tolerances -> new Aim(tolerances, measurand, untilDecided));
  }
}
