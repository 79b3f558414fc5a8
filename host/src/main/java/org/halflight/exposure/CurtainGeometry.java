package org.halflight.exposure;

/**
 * Where the three sensors see the curtains, in millimetres along the travel.
 *
 * <p>A curtain in front of the sensors throws its edge as a shadow. Rays from the middle of the
 * lamp meet it nearer to the axis than the sensors are, by the share {@code gap / lamp distance};
 * with 5 mm in 300 mm that is 1.7 %. The shadow of an edge is as wide as the slit of the sensor,
 * drawn together by the same share, and the image of the lamp, {@code lamp x gap / lamp distance}.
 *
 * @param frameMillimetres the frame along the travel
 * @param outerMillimetres from the centre to either outer sensor, at the sensors
 * @param sensorSlitMillimetres width of the slit over each sensor
 * @param curtainToSensorMillimetres from the curtain to the slits of the sensors
 * @param lampToSensorMillimetres from the lamp to the slits; infinite where its light is parallel
 * @param lampMillimetres the lamp along the travel
 * @param distancesKnown whether somebody said the distances; where not, nothing is corrected by
 *     them, and places are the less certain
 */
public record CurtainGeometry(
    double frameMillimetres,
    double outerMillimetres,
    double sensorSlitMillimetres,
    double curtainToSensorMillimetres,
    double lampToSensorMillimetres,
    double lampMillimetres,
    boolean distancesKnown) {
  /** From the centre to an outer sensor as a share of the frame (GOST 19821-83: about 45 %). */
  public static final double USUAL_OUTER_SHARE = 0.45;

  /** Usual slit of a sensor. */
  public static final double USUAL_SLIT_MILLIMETRES = 0.5;

  /** Usual distance from the curtain to the sensors. */
  public static final double USUAL_GAP_MILLIMETRES = 5;

  /** Usual distance of the lamp. */
  public static final double USUAL_LAMP_DISTANCE_MILLIMETRES = 300;

  /** Usual size of the lamp. */
  public static final double USUAL_LAMP_MILLIMETRES = 10;

  public CurtainGeometry {
    for (double length :
        new double[] {
          frameMillimetres, outerMillimetres, sensorSlitMillimetres, lampToSensorMillimetres
        }) {
      if (!(length > 0)) {
        throw new IllegalArgumentException("not a length of the set-up in mm: " + length);
      }
    }
    if (!(curtainToSensorMillimetres >= 0
        && curtainToSensorMillimetres < lampToSensorMillimetres
        && lampMillimetres >= 0)) {
      throw new IllegalArgumentException("the lamp must stand before the curtain");
    }
  }

  /** As the rig is built, with distances that nobody said. */
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

  /** By which share lengths at the curtain are shorter than their shadows at the sensors. */
  public double shrinkShare() {
    return curtainToSensorMillimetres / lampToSensorMillimetres;
  }

  /** A length at the sensors as it is at the curtain; unchanged where no distance is known. */
  public double atCurtain(double millimetres) {
    return distancesKnown ? millimetres * (1 - shrinkShare()) : millimetres;
  }

  /** A place from the centre of the frame, at the curtain, above 0 in the direction of travel. */
  public double placeMillimetres(Place place) {
    return switch (place) {
      case START -> -atCurtain(outerMillimetres);
      case CENTRE -> 0;
      case END -> atCurtain(outerMillimetres);
    };
  }

  /** The edge of the frame at the end of travel; that at its start is as far below 0. */
  public double edgeMillimetres() {
    return frameMillimetres / 2;
  }

  /** What of a curtain the slit of a sensor covers, without the blur. */
  public double slitAtCurtainMillimetres() {
    return sensorSlitMillimetres * (1 - shrinkShare());
  }

  /** What the size of the lamp adds to it. */
  public double blurMillimetres() {
    return lampMillimetres * shrinkShare();
  }
}
