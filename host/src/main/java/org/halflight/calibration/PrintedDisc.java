package org.halflight.calibration;

import java.util.List;

/**
 * A disc with the slots that this program prints: five of different angles with the same dark
 * between them, their edges straight lines through the middle, so that every point of the light is
 * uncovered for the same part of a turn however wide the light is.
 *
 * @param slotDegrees of the slots as they were measured, narrow to wide; as printed where nobody
 *     measured them
 * @param edgeMillimetres how far an edge may lie beside its place where the light passes
 * @param radiusMillimetres from the middle to where the light passes
 */
public record PrintedDisc(
    List<Double> slotDegrees, double edgeMillimetres, double radiusMillimetres) {
  /** The slots as printed, in degrees. */
  public static final List<Double> SLOT_DEGREES = List.of(3.6, 7.2, 14.4, 28.8, 57.6);

  /** The dark between two slots, as printed. */
  public static final double GAP_DEGREES =
      (360 - SLOT_DEGREES.stream().mapToDouble(Double::doubleValue).sum()) / SLOT_DEGREES.size();

  /** Card cut with a knife along a steel rule: our choice, to be replaced by what was measured. */
  public static final double EDGE_MILLIMETRES = 0.1;

  /** The middle of the slots as printed. */
  public static final double RADIUS_MILLIMETRES = 63;

  /** As printed. */
  public static final PrintedDisc AS_PRINTED =
      new PrintedDisc(SLOT_DEGREES, EDGE_MILLIMETRES, RADIUS_MILLIMETRES);

  /** Measured angles further than this from the printed ones are those of another disc. */
  private static final double GREATEST_SHARE_OFF = 0.1;

  public PrintedDisc {
    slotDegrees = List.copyOf(slotDegrees);
    if (!areSlots(slotDegrees)) {
      throw new IllegalArgumentException("not the slots of the printed disc: " + slotDegrees);
    }
    if (!(edgeMillimetres >= 0 && radiusMillimetres > 0)) {
      throw new IllegalArgumentException(
          "not an edge and a radius: " + edgeMillimetres + ", " + radiusMillimetres);
    }
  }

  /** Whether these are angles that the printed slots may have when they are cut. */
  public static boolean areSlots(List<Double> degrees) {
    if (degrees.size() != SLOT_DEGREES.size()) {
      return false;
    }
    for (int i = 0; i < degrees.size(); i++) {
      if (!(Math.abs(degrees.get(i) / SLOT_DEGREES.get(i) - 1) <= GREATEST_SHARE_OFF)) {
        return false;
      }
    }
    return true;
  }

  /** Where the middle of a slot lies as printed, in degrees from the first edge of the first. */
  public static double middleDegrees(int slot) {
    double at = 0;
    for (int i = 0; i < slot; i++) {
      at += SLOT_DEGREES.get(i) + GAP_DEGREES;
    }
    return at + SLOT_DEGREES.get(slot) / 2;
  }

  /** Standard uncertainty of the place of one edge, evenly spread within its limits. */
  public double edgeStandardUncertaintyDegrees() {
    return degrees(edgeMillimetres / Math.sqrt(3));
  }

  /** The angle of a short way along the edge of the circle that the light passes. */
  public double degrees(double millimetres) {
    return Math.toDegrees(millimetres / radiusMillimetres);
  }

  /** The way that a small angle makes there. */
  public double millimetres(double degrees) {
    return Math.toRadians(degrees) * radiusMillimetres;
  }
}
