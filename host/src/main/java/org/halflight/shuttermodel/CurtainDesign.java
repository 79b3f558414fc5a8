package org.halflight.shuttermodel;

/**
 * How a model curtain shutter is built when nothing is wrong with it. Lengths are along the travel.
 *
 * <p>Each curtain is pulled by a spring that slackens a little on the way and held back by dry
 * friction and by friction that grows with speed; the spring is as strong as the wanted travel
 * asks. The second curtain starts a little closer to the gate, so that it may be released after the
 * first has begun to move and still follows it evenly.
 *
 * @param frameMillimetres length of the frame
 * @param firstRunUpMillimetres from the edge of the wound first curtain to the start of the frame
 * @param secondRunUpMillimetres likewise of the second, shorter
 * @param travelMillis travel of each curtain from edge to edge of the frame
 * @param tensionTurns turns of each spring
 * @param stopMillimetres from the end of the frame to where a curtain stops
 * @param brakeMillimetres length of the brake before it
 * @param tripsByPosition whether the first curtain releases the second where it has come to a
 *     place, as in most cloth shutters; else a timer does
 * @param slowestSlitSeconds the longest time that is made without the escapement
 */
public record CurtainDesign(
    double frameMillimetres,
    double firstRunUpMillimetres,
    double secondRunUpMillimetres,
    double travelMillis,
    double tensionTurns,
    double stopMillimetres,
    double brakeMillimetres,
    boolean tripsByPosition,
    double slowestSlitSeconds) {
  /**
   * Horizontal cloth before a frame of 36 mm. Travel of 17 ms, entry 12 ms after the release and
   * edges 7 mm behind the gate are those of one camera in a repair manual; the rest is invented.
   */
  public static final CurtainDesign CLOTH_36 =
      new CurtainDesign(36, 7, 6, 17, 3.5, 2, 1.5, true, 1.0 / 60);

  /** Horizontal cloth before a frame of 56 mm; invented. */
  public static final CurtainDesign CLOTH_56 =
      new CurtainDesign(56, 10, 8.8, 26, 5, 2.5, 2, true, 1.0 / 30);

  /** Vertical metal blades before a frame of 24 mm; invented. */
  public static final CurtainDesign METAL_24 =
      new CurtainDesign(24, 3, 2.7, 5.5, 2, 1.5, 1, false, 1.0 / 60);

  /** The spring has lost this share of its pull at the end of the frame. */
  private static final double SLACKENS = 0.1;

  /** Dry friction as a share of the least pull that makes the travel. */
  private static final double DRY = 0.1;

  /** What grows with speed, as a share of speed lost in one travel. */
  private static final double VISCOUS = 0.05;

  /** How much of its speed a curtain keeps when it is thrown back. */
  private static final double REBOUND = 0.5;

  /** The share of the energy of a curtain that its brake takes when it is set right. */
  private static final double BRAKED = 0.92;

  /** Sixty halvings take any figure down to the last bits of a double. */
  private static final int HALVINGS = 60;

  public CurtainDesign {
    if (!(frameMillimetres > 0)
        || !(secondRunUpMillimetres > 0)
        || !(firstRunUpMillimetres >= secondRunUpMillimetres)
        || !(travelMillis > 0)
        || !(tensionTurns > 0)
        || !(stopMillimetres > brakeMillimetres)
        || !(brakeMillimetres > 0)) {
      throw new IllegalArgumentException("no curtain shutter is built like this");
    }
  }

  /** The first curtain as it should be. */
  CurtainDrive first() {
    return drive(firstRunUpMillimetres);
  }

  /** The second curtain as it should be. */
  CurtainDrive second() {
    return drive(secondRunUpMillimetres);
  }

  private CurtainDrive drive(double runUp) {
    // By constant acceleration first: the square roots of both ways differ by the travel.
    double roots = Math.sqrt(2 * (runUp + frameMillimetres)) - Math.sqrt(2 * runUp);
    double net = square(roots / (travelMillis * 1e-3));
    double dry = DRY * net;
    double viscous = VISCOUS / (travelMillis * 1e-3);
    double below = net;
    double above = 3 * net;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (below + above) / 2;
      if (unbraked(runUp, middle, dry, viscous).run().travelSeconds(frameMillimetres)
          > travelMillis * 1e-3) {
        below = middle;
      } else {
        above = middle;
      }
    }
    CurtainDrive free = unbraked(runUp, above, dry, viscous);
    double arrives = free.run().speedAt(frameMillimetres + stopMillimetres - brakeMillimetres);
    return free.withBrake(brakeMillimetres, BRAKED * square(arrives) / (2 * brakeMillimetres));
  }

  private CurtainDrive unbraked(double runUp, double pull, double dry, double viscous) {
    double slackening = SLACKENS * pull / (runUp + frameMillimetres);
    return new CurtainDrive(
        -runUp,
        pull,
        slackening,
        dry,
        viscous,
        0,
        frameMillimetres * 2 / 3,
        0,
        frameMillimetres + stopMillimetres,
        0.01,
        0,
        REBOUND);
  }

  private static double square(double x) {
    return x * x;
  }
}
