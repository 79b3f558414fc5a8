package org.halflight.exposure;

/**
 * Where the sensors are behind a curtain shutter, and how its light comes. Lengths in mm.
 *
 * @param frameMillimetres length of the frame in the direction of travel
 * @param outerMillimetres from the middle of the frame to each outer sensor, at the sensors; at
 *     most half the frame
 * @param sensorSlitMillimetres width of the slit before each sensor, in the direction of travel
 * @param curtainToSensorMillimetres from the curtain to the slits before the sensors; 0 or more
 * @param lampToSensorMillimetres from the lamp to the slits, further than the curtain; infinite for
 *     parallel light
 * @param lampMillimetres width of the lamp in the direction of travel; 0 for a point
 * @param isDepthSaid whether somebody said both distances; else they are the usual ones, which
 *     correct nothing and only widen what the figures are uncertain by
 */
public record CurtainGeometry(
    double frameMillimetres,
    double outerMillimetres,
    double sensorSlitMillimetres,
    double curtainToSensorMillimetres,
    double lampToSensorMillimetres,
    double lampMillimetres,
    boolean isDepthSaid) {
  /**
   * The usual place of the outer sensors, as a part of the frame from its middle. Our own choice.
   */
  public static final double USUAL_OUTER_SHARE = 0.45;

  /** The usual slit before a sensor, in mm. Our own choice. */
  public static final double USUAL_SLIT_MILLIMETRES = 0.5;

  /** The usual way from curtain to sensor, in mm. Our own choice. */
  public static final double USUAL_GAP_MILLIMETRES = 5;

  /** The usual distance of the lamp, in mm. Our own choice. */
  public static final double USUAL_LAMP_DISTANCE_MILLIMETRES = 300;

  /** The usual width of the lamp, in mm. Our own choice. */
  public static final double USUAL_LAMP_MILLIMETRES = 10;

  /** A lamp is further from the sensors than so many times the curtain. Our own limit. */
  public static final double LEAST_LAMP_GAPS = 10;

  public CurtainGeometry {
    if (!(frameMillimetres > 0)
        || !(outerMillimetres > 0 && outerMillimetres <= frameMillimetres / 2)
        || !(sensorSlitMillimetres > 0)
        || !(curtainToSensorMillimetres >= 0)
        || !(lampToSensorMillimetres > curtainToSensorMillimetres)
        || !(lampMillimetres >= 0)) {
      throw new IllegalArgumentException(
          "no places of sensors: "
              + String.join(
                  ", ",
                  String.valueOf(frameMillimetres),
                  String.valueOf(outerMillimetres),
                  String.valueOf(sensorSlitMillimetres),
                  String.valueOf(curtainToSensorMillimetres),
                  String.valueOf(lampToSensorMillimetres),
                  String.valueOf(lampMillimetres)));
    }
  }

  /** With both distances said. */
  public CurtainGeometry(
      double frameMillimetres,
      double outerMillimetres,
      double sensorSlitMillimetres,
      double curtainToSensorMillimetres,
      double lampToSensorMillimetres,
      double lampMillimetres) {
    this(
        frameMillimetres,
        outerMillimetres,
        sensorSlitMillimetres,
        curtainToSensorMillimetres,
        lampToSensorMillimetres,
        lampMillimetres,
        true);
  }

  /** All as it usually is but for the frame; the distances are not said. */
  public static CurtainGeometry usual(double frameMillimetres) {
    return new CurtainGeometry(
        frameMillimetres,
        USUAL_OUTER_SHARE * frameMillimetres,
        USUAL_SLIT_MILLIMETRES,
        USUAL_GAP_MILLIMETRES,
        USUAL_LAMP_DISTANCE_MILLIMETRES,
        USUAL_LAMP_MILLIMETRES,
        false);
  }

  /**
   * Whether a lamp is so near that its spreading rays, not the curtains, would be measured.
   *
   * @param curtainToSensorMillimetres from the curtain to the sensors
   * @param lampToSensorMillimetres from the lamp to the sensors
   */
  public static boolean isLampTooNear(
      double curtainToSensorMillimetres, double lampToSensorMillimetres) {
    return lampToSensorMillimetres < LEAST_LAMP_GAPS * curtainToSensorMillimetres;
  }

  /**
   * By how much a length at the curtain is shorter than its shadow at the sensors, as a part of it:
   * the rays of a lamp spread.
   */
  public double shrinkage() {
    return curtainToSensorMillimetres / lampToSensorMillimetres;
  }

  /** A length at the sensors, at the curtain; as it is where the distances are not said. */
  public double atCurtain(double millimetres) {
    return isDepthSaid ? millimetres * (1 - shrinkage()) : millimetres;
  }

  /** A place from the middle of the frame, at the curtain, above 0 in the direction of travel. */
  public double placeMillimetres(Place place) {
    return switch (place) {
      case START -> -atCurtain(outerMillimetres);
      case CENTRE -> 0;
      case END -> atCurtain(outerMillimetres);
    };
  }

  /** The edge of the frame at the end of travel, from its middle; that at the start is below 0. */
  public double edgeMillimetres() {
    return frameMillimetres / 2;
  }

  /** The width of the slit before a sensor as the curtain sees it, in mm. */
  public double slitAtCurtainMillimetres() {
    return atCurtain(sensorSlitMillimetres);
  }

  /** The width of the lamp's blur on the curtain, in mm there. */
  public double lampAtCurtainMillimetres() {
    return lampMillimetres * shrinkage();
  }
}
