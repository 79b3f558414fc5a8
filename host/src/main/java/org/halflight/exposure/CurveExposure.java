package org.halflight.exposure;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.stored.StoredWords;

/** What the light curve of one firing comes to. Each case is an outcome, none an error. */
public sealed interface CurveExposure {
  /** Why a light curve gives no figure. */
  enum Reason {
    /** Dark and full light are not known well enough; the light has to be set. */
    LIGHT_NOT_KNOWN,
    /** The rig stopped before it was dark again. */
    CUT_OFF,
    /** Readings are missing between two parts. */
    PARTS_MISSING,
    /** Values were lost on the way from the rig. */
    VALUES_LOST,
    /** The converter was at its end: the light may have been brighter than it reads. */
    SATURATED,
    /** It never became bright enough to be told from the dark. */
    NO_LIGHT,
    /** It was bright already when the readings begin, and how it opened is not to be seen. */
    BEGINS_IN_LIGHT,
    /** It was still bright when the readings end, and how it closed is not to be seen. */
    ENDS_IN_LIGHT,
    /** It was clearly brighter than full light: the light that was set is not this one. */
    BRIGHTER_THAN_FULL;

    /** As files store them. */
    public static final StoredWords<Reason> WORDS =
        StoredWords.of(
            Reason.class,
            reason ->
                switch (reason) {
                  case LIGHT_NOT_KNOWN -> "light-not-known";
                  case CUT_OFF -> "cut-off";
                  case PARTS_MISSING -> "parts-missing";
                  case VALUES_LOST -> "values-lost";
                  case SATURATED -> "saturated";
                  case NO_LIGHT -> "no-light";
                  case BEGINS_IN_LIGHT -> "begins-in-light";
                  case ENDS_IN_LIGHT -> "ends-in-light";
                  case BRIGHTER_THAN_FULL -> "brighter-than-full";
                });
  }

  /** When the light passed one half. */
  record HalfLight(double riseSeconds, double fallSeconds) {}

  /**
   * A light curve that was seen from dark to dark. All times but the effective one are of the main
   * opening: the one with the most light. Times of day are seconds from the first reading of the
   * curve.
   *
   * @param effectiveSeconds the integral of the light as a fraction of the full light that was set,
   *     never of the peak; with the light beside the main opening that begins within {@link
   *     LeafExposureMethod#EXPOSURE_GAP_SECONDS} of it
   * @param mainSeconds the part of it that is of the main opening
   * @param toleranceSeconds what the converter and its steps leave open about it, plus or minus;
   *     not the uncertainty of the measurement
   * @param addedSeconds the part of it that lies before the first or after the last reading, by the
   *     law of the ramp; mostly 0
   * @param totalSeconds from first to last light; by the laws of the ramps where these are known
   * @param peak greatest light
   * @param openedFully whether the peak is full light, as far as light can be known
   * @param plateauLight light while fully open by the means of the plateau, where there are some:
   *     full light, measured again. The curve is not rescaled by it
   * @param firstLightSeconds when the opening begins
   * @param opening the opening ramp, where enough readings show it
   * @param closing the closing ramp, likewise
   * @param halfLight where the peak is above one half
   * @param otherLightShare light outside the main opening that counts, as a share of its light
   */
  record Measured(
      double effectiveSeconds,
      double mainSeconds,
      double toleranceSeconds,
      double addedSeconds,
      double totalSeconds,
      double peak,
      boolean openedFully,
      OptionalDouble plateauLight,
      double firstLightSeconds,
      Optional<Ramp> opening,
      Optional<Ramp> closing,
      Optional<HalfLight> halfLight,
      double otherLightShare)
      implements CurveExposure {
    /** Effective over total time of the main opening, 0 to 1. */
    public double efficiency() {
      return mainSeconds() / totalSeconds;
    }

    /** The time between the half-light points, in seconds. */
    public OptionalDouble halfWidthSeconds() {
      return halfLight.isPresent()
          ? OptionalDouble.of(halfLight.get().fallSeconds() - halfLight.get().riseSeconds())
          : OptionalDouble.empty();
    }

    /** The stop table with the laws of this curve, where it opened fully and shows both ramps. */
    public Optional<CurveStopTable> stopTable() {
      return openedFully && opening.isPresent() && closing.isPresent()
          ? Optional.of(new CurveStopTable(totalSeconds, opening.get(), closing.get()))
          : Optional.empty();
    }
  }

  /** No figure, and why. The raw curve is kept all the same. */
  record Refused(Reason reason) implements CurveExposure {}

  /** The figures, where there are some. */
  default Optional<Measured> measured() {
    return this instanceof Measured measured ? Optional.of(measured) : Optional.empty();
  }
}
