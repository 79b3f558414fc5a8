package org.halflight.uncertainty;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.light.PupilLight;
import org.halflight.profile.ClockRate;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.EdgeDelays;
import org.halflight.profile.RigProfile;
import org.halflight.signal.Channel;

/**
 * How far each thing about a rig may be off. The wide allowances hold for any rig built as
 * described; a calibration narrows those that it measured. Light that does not fall evenly over the
 * pupil is not seen in the edges: its allowance stays until a test of the panel limits it.
 *
 * @param levels where the comparators switch, as a share of full light
 * @param lamp full light, as a share of it
 * @param delaySeconds lag and delays, on the effective time
 * @param hysteresis as a share of full light
 * @param quantisationSeconds on the effective time
 * @param clock as a share of the time
 * @param pupil light that does not fall evenly over the pupil: by what times read long, as a share
 *     of opening plus closing time
 */
public record RigKnowledge(
    InputUncertainty levels,
    InputUncertainty lamp,
    InputUncertainty delaySeconds,
    InputUncertainty hysteresis,
    InputUncertainty quantisationSeconds,
    InputUncertainty clock,
    InputUncertainty pupil) {
  /**
   * A common comparator's offset is up to 9 mV over temperature, and a threshold is read back to
   * one count of the converter, 5 mV: 1.4 % of the 1 V of light that is the least allowed.
   */
  static final double LEVEL_BOUND = 0.015;

  /** Nobody has set the light: the thresholds are taken to stand where they should. */
  static final double UNSET_LEVEL_BOUND = 0.1;

  /**
   * A lamp should hold to 0.3 % between setting the light and the shot. Warm-up and a crooked panel
   * make more of it, and nothing but a slow firing's plateau watches them.
   */
  static final double LAMP_BOUND = 0.01;

  /**
   * A front end lags by 1 us or less by design, a two-channel edge is stamped within 2 us by
   * software; unlike on both edges at the worst.
   */
  static final double DELAY_BOUND_SECONDS = 2e-6;

  /** 30 mV of the 1 V of light that is the least allowed. */
  static final double HYSTERESIS_BOUND = 0.03;

  /** One tick of 16 MHz, and eight at the channel that software stamps, on a mean of two widths. */
  static final double QUANTISATION_BOUND_SECONDS = 4.5 / 16e6;

  /** Initial tolerance of the ceramic resonator of common boards, by its data sheet. */
  static final double RESONATOR_BOUND = 5000e-6;

  /** A resonator drifts by about 10 ppm a degree; a bench swings by 5 degrees. */
  static final double RESONATOR_DRIFT_BOUND = 50e-6;

  /** The same within the two minutes that a live rate is from: one degree. Our choice. */
  static final double LIVE_DRIFT_BOUND = 10e-6;

  /**
   * Each session reads dark, full light and thresholds in whole counts, evenly spread: of a level
   * the root of a sum of three, weighted 1, 0.8 and 0.2 at either node.
   */
  static final double READING_COUNTS = Math.sqrt((1 + 0.8 * 0.8 + 0.2 * 0.2) / 12);

  /** A rig of which nothing is known, with its light set. */
  public static final RigKnowledge UNCALIBRATED =
      new RigKnowledge(
          InputUncertainty.within(LEVEL_BOUND, Basis.ALLOWANCE),
          InputUncertainty.within(LAMP_BOUND, Basis.ALLOWANCE),
          InputUncertainty.within(DELAY_BOUND_SECONDS, Basis.ALLOWANCE),
          InputUncertainty.within(HYSTERESIS_BOUND, Basis.ALLOWANCE),
          InputUncertainty.within(QUANTISATION_BOUND_SECONDS, Basis.ALLOWANCE),
          InputUncertainty.within(RESONATOR_BOUND, Basis.ALLOWANCE),
          InputUncertainty.readsLong(
              PupilLight.readsLongShare(PupilLight.UNTESTED_FALL), Basis.ALLOWANCE));

  /** No rig at all: the errors of a model are what they are. */
  public static final RigKnowledge NO_RIG =
      new RigKnowledge(
          InputUncertainty.NONE,
          InputUncertainty.NONE,
          InputUncertainty.NONE,
          InputUncertainty.NONE,
          InputUncertainty.NONE,
          InputUncertainty.NONE);

  /** With light that is even wherever it counts, as for a slot in front of the sensor. */
  public RigKnowledge(
      InputUncertainty levels,
      InputUncertainty lamp,
      InputUncertainty delaySeconds,
      InputUncertainty hysteresis,
      InputUncertainty quantisationSeconds,
      InputUncertainty clock) {
    this(levels, lamp, delaySeconds, hysteresis, quantisationSeconds, clock, InputUncertainty.NONE);
  }

  /**
   * What a calibration leaves to doubt, for times that were corrected by it.
   *
   * @param spanCounts full less dark light of the firings: what a count of the converter is as a
   *     share hangs on it; where nobody set the light, the least that the profile was made in
   */
  public static RigKnowledge of(RigProfile profile, OptionalDouble spanCounts) {
    double span =
        spanCounts.orElse(profile.light().leastFullCounts() - profile.light().darkCounts());
    Optional<Double> trip = tripCounts(profile).map(counts -> counts / span);
    return new RigKnowledge(
        levels(trip, span),
        UNCALIBRATED.lamp,
        delay(profile),
        trip.map(u -> hysteresis(profile, u, span)).orElse(UNCALIBRATED.hysteresis),
        UNCALIBRATED.quantisationSeconds,
        profile
            .clock()
            .map(rate -> clock(rate, RESONATOR_DRIFT_BOUND, Basis.CALIBRATION))
            .orElse(UNCALIBRATED.clock),
        UNCALIBRATED.pupil);
  }

  /** The same rig with light that nobody has set. */
  public RigKnowledge withLightUnset() {
    return equals(NO_RIG)
        ? this
        : with(InputUncertainty.within(UNSET_LEVEL_BOUND, Basis.ALLOWANCE), clock, pupil);
  }

  /**
   * The same rig, with a test of its panel.
   *
   * @param fall the most by which light falls from the middle of the pupil to its edge, 0 to 1
   */
  public RigKnowledge withPanelTested(double fall) {
    return with(
        levels, clock, InputUncertainty.readsLong(PupilLight.readsLongShare(fall), Basis.SESSION));
  }

  /** Whether a calibration stands behind any of it. */
  public boolean isCalibrated() {
    return levels.basis() == Basis.CALIBRATION
        || delaySeconds.basis() == Basis.CALIBRATION
        || clock.basis() == Basis.CALIBRATION;
  }

  /** The same rig, with times corrected by the rate that its pings tell. */
  public RigKnowledge withLiveClock(ClockRate rate) {
    return with(levels, clock(rate, LIVE_DRIFT_BOUND, Basis.SESSION), pupil);
  }

  private RigKnowledge with(
      InputUncertainty otherLevels, InputUncertainty otherClock, InputUncertainty otherPupil) {
    return new RigKnowledge(
        otherLevels, lamp, delaySeconds, hysteresis, quantisationSeconds, otherClock, otherPupil);
  }

  private static InputUncertainty levels(Optional<Double> trip, double span) {
    double reading = READING_COUNTS / span;
    return trip.map(u -> InputUncertainty.normal(Math.hypot(u, reading), Basis.CALIBRATION))
        .orElse(UNCALIBRATED.levels);
  }

  /**
   * Times are worked out at the middle of both ways of a comparator, so its hysteresis is known and
   * left in: all of it counts, beside the doubt of the distance of two trip points, which noise
   * moves apart or together (a known effect that is not corrected: JCGM 100:2008, F.2.4.5).
   */
  private static InputUncertainty hysteresis(RigProfile profile, double trip, double span) {
    double left =
        profile.tripPoints().values().stream()
                .mapToDouble(ComparatorTrips::hysteresisCounts)
                .average()
                .orElseThrow()
            / span;
    return InputUncertainty.normal(Math.hypot(left, 2 * trip), Basis.CALIBRATION);
  }

  private static Optional<Double> tripCounts(RigProfile profile) {
    Collection<ComparatorTrips> points = profile.tripPoints().values();
    return profile
            .tripPoints()
            .keySet()
            .containsAll(List.of(Channel.CENTRE_LOW, Channel.CENTRE_HIGH))
        ? Optional.of(
            points.stream()
                .mapToDouble(ComparatorTrips::standardUncertaintyCounts)
                .max()
                .orElseThrow())
        : Optional.empty();
  }

  private static InputUncertainty delay(RigProfile profile) {
    EdgeDelays low = profile.delays().get(Channel.CENTRE_LOW);
    EdgeDelays high = profile.delays().get(Channel.CENTRE_HIGH);
    return low == null || high == null
        ? UNCALIBRATED.delaySeconds
        : InputUncertainty.normal(
            Math.hypot(
                    low.widthStandardUncertaintySeconds(), high.widthStandardUncertaintySeconds())
                / 2,
            Basis.CALIBRATION);
  }

  private static InputUncertainty clock(ClockRate rate, double driftBound, Basis basis) {
    double drift = InputUncertainty.within(driftBound, Basis.ALLOWANCE).standard();
    return new InputUncertainty(
        Distribution.NORMAL,
        Math.hypot(rate.standardUncertaintyPpm() * 1e-6, drift),
        rate.degreesOfFreedom(),
        basis);
  }
}
