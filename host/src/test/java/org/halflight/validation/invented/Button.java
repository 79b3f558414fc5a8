package org.halflight.validation.invented;

/**
 * The release button of one camera that couples film advance and shutter, over millimetres of its
 * stroke. All figures are our own, none was measured on a camera.
 *
 * @param unlockMm where the advance unlocks
 * @param tripMm where the shutter trips
 * @param scatterMm of both places from press to press, a standard deviation
 * @param endMm where the stroke ends
 * @param load what it takes to press it
 * @param silent the pawl of the advance is lifted without a sound
 * @param relocks the advance locks again when the button returns and the shutter has not tripped
 * @param knocks the button is heard at the end of its stroke and when it is back
 * @param toLightSeconds from the trip to first light
 */
public record Button(
    double unlockMm,
    double tripMm,
    double scatterMm,
    double endMm,
    Load load,
    boolean silent,
    boolean relocks,
    boolean knocks,
    double toLightSeconds) {
  /** The shutter is at 1/8. */
  static final double OPEN_SECONDS = 0.125;

  private static final double END_NEWTON_PER_MM = 12;
  private static final double REACH_MM = 0.3;
  private static final double TOUCH_MM = 0.05;

  /**
   * What the finger feels: a spring, and before either place a rise over three tenths of a
   * millimetre that is gone, with a bit more, once the place is passed.
   */
  record Load(
      double startNewton,
      double newtonPerMm,
      double unlockRise,
      double unlockDrop,
      double tripRise,
      double tripDrop) {}

  /**
   * What the study hangs on and nobody has measured.
   *
   * @param drops how much more than usual the load drops
   * @param reactionSeconds median of all people
   */
  public record Nature(double drops, double reactionSeconds) {
    public static final Nature USUAL = new Nature(1, 0.2);
  }

  /** What is varied of a study's cameras. */
  public enum Kind {
    PLAIN("plain"),
    SILENT("silent pawl"),
    RELOCKS("locks again"),
    SILENT_AND_RELOCKS("silent pawl, locks again");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    boolean silent() {
      return this == SILENT || this == SILENT_AND_RELOCKS;
    }

    boolean relocks() {
      return this == RELOCKS || this == SILENT_AND_RELOCKS;
    }
  }

  /**
   * A camera whose advance unlocks ahead of the shutter.
   *
   * @param gapMm by how much, below 0 for a shutter that trips first
   */
  public static Button drawn(double gapMm, Kind kind, Nature nature, Draws draws) {
    double first = draws.between(1.2, 2.8);
    double unlock = first + Math.max(0, -gapMm);
    double trip = unlock + gapMm;
    double drops = nature.drops();
    double unlockRise = drops * draws.between(0, 0.3);
    double tripRise = drops * draws.between(0.1, 0.6);
    Load load =
        new Load(
            draws.between(0.5, 1.5),
            draws.between(0.6, 2),
            unlockRise,
            unlockRise + drops * draws.between(0, 0.15),
            tripRise,
            tripRise + drops * draws.between(0, 0.2));
    return new Button(
        unlock,
        trip,
        draws.between(0.01, 0.05),
        Math.max(unlock, trip) + draws.between(0.4, 1.2),
        load,
        kind.silent(),
        kind.relocks(),
        draws.coin(),
        draws.between(0.002, 0.010));
  }

  /**
   * Reads a screw plunger that is turned division by division until each has happened, once more
   * now and then.
   *
   * @return the places of advance and shutter, in mm
   */
  public double[] readByPlunger(double divisionMm, Draws draws) {
    Button now = inOnePress(draws);
    double[] read = {now.unlockMm, now.tripMm};
    for (int i = 0; i < read.length; i++) {
      int late = draws.chance(0.3) ? 1 : 0;
      read[i] = divisionMm * (Math.ceil(read[i] / divisionMm) + late);
    }
    return read;
  }

  /** By how much the load drops when the shutter trips, in newton. */
  public double tripDrop() {
    return load.tripDrop();
  }

  double firstMm() {
    return Math.min(unlockMm, tripMm);
  }

  /** The same camera in one press: its two places are a little elsewhere each time. */
  Button inOnePress(Draws draws) {
    return new Button(
        unlockMm + scatterMm * draws.normal(),
        tripMm + scatterMm * draws.normal(),
        0,
        endMm,
        load,
        silent,
        relocks,
        knocks,
        toLightSeconds);
  }

  /** What pushes the finger back, in newton. */
  double newton(double mm, boolean unlocked, boolean tripped) {
    double force =
        mm <= 0 ? 0 : load.startNewton * Math.min(1, mm / TOUCH_MM) + load.newtonPerMm * mm;
    force += unlocked ? load.unlockRise - load.unlockDrop : rise(load.unlockRise, unlockMm, mm);
    force += tripped ? load.tripRise - load.tripDrop : rise(load.tripRise, tripMm, mm);
    if (mm > endMm) {
      force += END_NEWTON_PER_MM * (mm - endMm);
    }
    return force;
  }

  private static double rise(double newton, double placeMm, double mm) {
    double part = 1 - (placeMm - mm) / REACH_MM;
    return part <= 0 ? 0 : newton * Math.min(1, part);
  }
}
