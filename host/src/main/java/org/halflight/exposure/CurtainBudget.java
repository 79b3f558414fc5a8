package org.halflight.exposure;

import java.util.Optional;
import org.halflight.signal.Channel;

/**
 * How far figures of curtains may be off, 19 times in 20. Light acts while a curtain's edge passes
 * the shadow of a sensor only: an error of the level by a share of full light moves both edges by
 * that share of their ramps, and in opposite directions. Places act on travel and window, and not
 * on the exposure at a place.
 *
 * @param geometry where the sensors are taken to be
 * @param sensors their light
 * @param clockShare bound of the rate of the board's clock, as a share
 */
record CurtainBudget(CurtainGeometry geometry, OuterSensors sensors, double clockShare) {
  /** A common comparator's offset over temperature: 9 mV of 5 V, in counts. */
  private static final double OFFSET_COUNTS = 1.85;

  /** Hysteresis of up to 30 mV: half of it on each edge. */
  private static final double HALF_HYSTERESIS_COUNTS = 3.1;

  /** Two resistors of 1 % halve the way between both thresholds. */
  private static final double MIDDLE_SHARE = 0.005;

  /** A lamp between setting the light and the firing, as a share of full light. */
  private static final double LAMP_BOUND = 0.01;

  /** Dark and full light are read to this, as a share of full light. */
  private static final double READING_STANDARD = 0.002;

  /** Slits of one make: outer against centre, in millimetres. */
  private static final double SLIT_STANDARD_MILLIMETRES = 0.025;

  /** What local speed by three places may be off by, as a share. */
  private static final double SPEED_STANDARD = 0.06;

  /** Delays of opening and closing edge, and steps of a channel that software stamps. */
  private static final double STAMP_STANDARD_SECONDS = 0.9e-6;

  /** The centre averages two levels, one stamped by hardware. */
  private static final double CENTRE_STAMP_STANDARD_SECONDS = 0.6e-6;

  /** A sensor is where it should be to this. */
  private static final double PLACE_BOUND_MILLIMETRES = 0.1;

  /** The bar of all three, and the lamp beside the axis. */
  private static final double BAR_BOUND_MILLIMETRES = 0.3;

  /** A person measures from curtain to slits to this, and curtains lie in two planes. */
  private static final double GAP_BOUND_MILLIMETRES = 0.7;

  /**
   * Where nobody said them: from none to nearly three times the usual, and more on the slow way at
   * the start.
   */
  private static final double UNSAID_SHRINKAGE_BOUND = 0.05;

  /** Light at one level of a pulse of any height, as a share of it. */
  private static final double PULSE_SHARE = 0.2;

  /** Both curtains over a sensor at once: as a share of both ramps. */
  private static final double NARROW_SHARE = 0.15;

  /**
   * What a curtain may do in the outer part that no sensor sees, as a share of the time there,
   * beside the force of its spring: friction, taper of its roller, run-up, brake.
   */
  private static final double UNSEEN_STANDARD = 0.07;

  /** What a curtain that gains nothing may lose beyond the sensor, as a share of the time there. */
  private static final double DRAG_SHARE = 1.25;

  /** Last half over first half of a curtain that nothing holds. Our choice. */
  private static final double USUAL_GAIN = 1.3;

  /**
   * From one curtain to the other along the light, in millimetres: blades of two packs, and cloth
   * on neighbouring rollers. Light that comes at a slant sees them at places that differ.
   */
  private static final double BLADES_APART_MILLIMETRES = 1;

  private static final double CLOTHS_APART_MILLIMETRES = 0.3;

  /** Frames along which blades run are shorter. */
  private static final double LONGEST_OF_BLADES_MILLIMETRES = 30;

  /** The middle of the lamp beside the axis. */
  private static final double LAMP_ASIDE_MILLIMETRES = 5;

  /**
   * Errors of both ends are not independent: slant light makes one longer and the other shorter.
   */
  private static final double UNLIKE_SHARE = 0.9;

  private static final double THOUSANDTH = 1e-3;

  /** Light for a level that nobody set: the least that is allowed. */
  private static final double LEAST_COUNTS = LightLevels.LEAST_LIGHT_COUNTS;

  /**
   * Exposure at an outer place.
   *
   * @param place from the centre, in millimetres
   * @param level where it switches, as a fraction
   * @param closesMetresPerSecond speed of the second curtain there
   * @param otherLight light weighed by this level beside the main part: bounce, dip
   * @param narrowRamps both ramps where the slit is narrower than a shadow; else 0
   */
  double outer(
      Channel channel,
      double place,
      double level,
      double closesMetresPerSecond,
      double effective,
      double opens,
      double closes,
      double widthMillimetres,
      double otherLight,
      double narrowRamps) {
    double ramps = opens + closes;
    Optional<SensorLevel> known = sensors.level(channel);
    double light = known.map(SensorLevel::lightCounts).orElse(LEAST_COUNTS);
    double centre = sensors.centreLightCounts().orElse(light);
    double off = Math.abs(level - 0.5);
    PlusMinus sum =
        new PlusMinus()
            .within(OFFSET_COUNTS / light * ramps)
            .within(MIDDLE_SHARE * levelsApart() * centre / light * ramps)
            .within(LAMP_BOUND * level * ramps)
            .normal(READING_STANDARD * level * ramps)
            .within(HALF_HYSTERESIS_COUNTS / light * Math.abs(opens - closes))
            .normal(off * SLIT_STANDARD_MILLIMETRES / widthMillimetres * ramps)
            .normal(off * SPEED_STANDARD * ramps)
            .normal(STAMP_STANDARD_SECONDS)
            .within(clockShare * effective)
            .within(slantSeconds(place, closesMetresPerSecond))
            .within(PULSE_SHARE * otherLight)
            .within(NARROW_SHARE * narrowRamps);
    if (known.isEmpty()) {
      // Its light may be anything that the meter lets pass: it then switches within these levels.
      sum.within((SensorLevel.MOST - 0.5) * ramps);
    }
    return sum.value();
  }

  /** Exposure at the centre. */
  double centre(
      double closesMetresPerSecond,
      double effective,
      double ramps,
      double otherLight,
      double narrowRamps) {
    double light = sensors.centreLightCounts().orElse(LEAST_COUNTS);
    return new PlusMinus()
        // Two comparators, each of which is off by itself.
        .within(OFFSET_COUNTS / light * ramps / 2)
        .within(OFFSET_COUNTS / light * ramps / 2)
        .within(LAMP_BOUND * ramps / 2)
        .normal(READING_STANDARD * ramps / 2)
        .normal(CENTRE_STAMP_STANDARD_SECONDS)
        .within(clockShare * effective)
        .within(slantSeconds(0, closesMetresPerSecond))
        .within(PULSE_SHARE / 2 * otherLight)
        .within(NARROW_SHARE * narrowRamps)
        .value();
  }

  private double slantSeconds(double place, double metresPerSecond) {
    double apart =
        geometry.frameMillimetres() < LONGEST_OF_BLADES_MILLIMETRES
            ? BLADES_APART_MILLIMETRES
            : CLOTHS_APART_MILLIMETRES;
    double slant = (Math.abs(place) + LAMP_ASIDE_MILLIMETRES) / geometry.lampToSensorMillimetres();
    return apart * slant * THOUSANDTH / metresPerSecond;
  }

  /**
   * What a curtain that hardly gains on the way may lose beyond the last sensor, in seconds:
   * springs let it gain a quarter or more, and what it did not gain something took that may not
   * have ended.
   */
  private double drag(CurtainCurve curve) {
    double gain = curve.lastHalfMetresPerSecond() / curve.firstHalfMetresPerSecond();
    double lacking = Math.min(1, Math.max(0, (USUAL_GAIN - gain) / (USUAL_GAIN - 1)));
    double edge = geometry.edgeMillimetres();
    return DRAG_SHARE
        * lacking
        * (curve.secondsAt(edge) - curve.secondsAt(geometry.placeMillimetres(Place.END)));
  }

  /** Time from edge to edge of the frame. */
  double edges(CurtainCurve curve) {
    double edge = geometry.edgeMillimetres();
    double whole = curve.secondsOver(geometry.frameMillimetres());
    double span = geometry.placeMillimetres(Place.END);
    double places = PLACE_BOUND_MILLIMETRES / (2 * span) * whole;
    return new PlusMinus()
        .within(places)
        .within(places)
        .within(shrinkageBound() * whole)
        .within(curve.boundSeconds(edge) + curve.boundSeconds(-edge))
        .within(drag(curve))
        .normal(UNSEEN_STANDARD * (curve.secondsAt(edge) - curve.secondsAt(span)))
        .normal(UNSEEN_STANDARD * (curve.secondsAt(-span) - curve.secondsAt(-edge)))
        .normal(STAMP_STANDARD_SECONDS)
        .within(clockShare * whole)
        .value();
  }

  /** Difference of both travels between the outer sensors. */
  double difference(CurtainRun first, CurtainRun second, double startDoubt, double endDoubt) {
    double apart = second.outerSeconds() - first.outerSeconds();
    double span = 2 * geometry.placeMillimetres(Place.END);
    double place = PLACE_BOUND_MILLIMETRES / span * apart;
    // It is the difference of the exposures at both ends; errors of places hardly touch it.
    return Math.hypot(
        UNLIKE_SHARE * (startDoubt + endDoubt),
        new PlusMinus().within(place).within(place).value());
  }

  /** From the first curtain at the edge of the end to the second at the edge of the start. */
  double window(CurtainCurve first, CurtainCurve second, double window, double exposureDoubt) {
    double edge = geometry.edgeMillimetres();
    double span = geometry.placeMillimetres(Place.END);
    double firstSlowness = THOUSANDTH / first.metresPerSecondAt(edge);
    double secondSlowness = THOUSANDTH / second.metresPerSecondAt(-edge);
    double pieces = edge * (firstSlowness + secondSlowness);
    return Math.hypot(
        exposureDoubt,
        new PlusMinus()
            .within(PLACE_BOUND_MILLIMETRES * firstSlowness)
            .within(PLACE_BOUND_MILLIMETRES * secondSlowness)
            .within(BAR_BOUND_MILLIMETRES * Math.abs(firstSlowness - secondSlowness))
            .within(shrinkageBound() * pieces)
            .within(first.boundSeconds(edge) + second.boundSeconds(-edge))
            .within(drag(first))
            .normal(UNSEEN_STANDARD * (first.secondsAt(edge) - first.secondsAt(span)))
            .normal(UNSEEN_STANDARD * (second.secondsAt(-span) - second.secondsAt(-edge)))
            .normal(STAMP_STANDARD_SECONDS)
            .within(clockShare * Math.abs(window))
            .value());
  }

  private double shrinkageBound() {
    return geometry.isDepthSaid()
        ? GAP_BOUND_MILLIMETRES / geometry.lampToSensorMillimetres()
        : UNSAID_SHRINKAGE_BOUND;
  }

  private static double levelsApart() {
    return LevelPair.GAUSS.high() - LevelPair.GAUSS.low();
  }
}
