package org.halflight.validation.invented;

/**
 * An invented rig, as it really is. Voltages are in counts of a ten-bit converter.
 *
 * @param dark light in the dark
 * @param full light with the shutter open, when the light was set
 * @param lowThreshold voltage at the comparator of the low level
 * @param highThreshold likewise
 * @param lowOffset how much more light than its threshold the comparator takes
 * @param highOffset likewise
 * @param lowHysteresis how much more light it takes to switch on than off
 * @param highHysteresis likewise
 * @param lowRiseSeconds from the crossing to the stamp
 * @param lowFallSeconds likewise
 * @param highRiseSeconds likewise
 * @param highFallSeconds likewise
 * @param clockFast by which part the board counts more ticks than it says
 * @param fade by which part the lamp has become brighter since the light was set
 * @param wander standard deviation of the lamp from firing to firing, as a part
 */
public record Rig(
    double dark,
    double full,
    double lowThreshold,
    double highThreshold,
    double lowOffset,
    double highOffset,
    double lowHysteresis,
    double highHysteresis,
    double lowRiseSeconds,
    double lowFallSeconds,
    double highRiseSeconds,
    double highFallSeconds,
    double clockFast,
    double fade,
    double wander) {
  /** The two nodes that the thresholds are set to: one half less and more of 1 / sqrt 3. */
  static final double LOW_NODE = 0.5 - 0.5 / Math.sqrt(3);

  static final double HIGH_NODE = 0.5 + 0.5 / Math.sqrt(3);

  /** 9 mV of 5 V: what common comparators are off by. */
  private static final double OFFSET_COUNTS = 0.009 / 5 * 1024;

  /** 30 mV of 5 V. */
  private static final double HYSTERESIS_COUNTS = 0.030 / 5 * 1024;

  private static final double DELAY_SECONDS = 2e-6;
  private static final double RESONATOR = 5000e-6;
  private static final double FADE = 0.006;
  private static final double WANDER = 0.0035;

  /** A rig as docs/full-rig.md has it built, each thing off by what its parts allow. */
  public static Rig drawn(Draws draws) {
    double dark = draws.between(5, 30);
    double full = dark + draws.between(300, 880);
    return new Rig(
        dark,
        full,
        threshold(dark + LOW_NODE * (full - dark)),
        threshold(dark + HIGH_NODE * (full - dark)),
        draws.either(OFFSET_COUNTS),
        draws.either(OFFSET_COUNTS),
        draws.between(0, HYSTERESIS_COUNTS),
        draws.between(0, HYSTERESIS_COUNTS),
        draws.between(0, DELAY_SECONDS),
        draws.between(0, DELAY_SECONDS),
        draws.between(0, DELAY_SECONDS),
        draws.between(0, DELAY_SECONDS),
        draws.either(RESONATOR),
        draws.either(FADE),
        WANDER);
  }

  /** The same with other light, and its thresholds set to that. */
  Rig withFull(double otherFull) {
    return new Rig(
        dark,
        otherFull,
        threshold(dark + LOW_NODE * (otherFull - dark)),
        threshold(dark + HIGH_NODE * (otherFull - dark)),
        lowOffset,
        highOffset,
        lowHysteresis,
        highHysteresis,
        lowRiseSeconds,
        lowFallSeconds,
        highRiseSeconds,
        highFallSeconds,
        clockFast,
        fade,
        wander);
  }

  /** A rig without a fault, with the thresholds just at the nodes. */
  public static Rig exact() {
    double dark = 20;
    double full = 820;
    return new Rig(
        dark,
        full,
        dark + LOW_NODE * (full - dark),
        dark + HIGH_NODE * (full - dark),
        0,
        0,
        0,
        0,
        0,
        0,
        0,
        0,
        0,
        0,
        0);
  }

  /** The same with another lamp. */
  public Rig withLamp(double fadeOfIt, double wanderOfIt) {
    return new Rig(
        dark,
        full,
        lowThreshold,
        highThreshold,
        lowOffset,
        highOffset,
        lowHysteresis,
        highHysteresis,
        lowRiseSeconds,
        lowFallSeconds,
        highRiseSeconds,
        highFallSeconds,
        clockFast,
        fadeOfIt,
        wanderOfIt);
  }

  /** The same with both comparators that much later on falling light. */
  public Rig withLateFall(double seconds) {
    return new Rig(
        dark,
        full,
        lowThreshold,
        highThreshold,
        lowOffset,
        highOffset,
        lowHysteresis,
        highHysteresis,
        lowRiseSeconds,
        lowFallSeconds + seconds,
        highRiseSeconds,
        highFallSeconds + seconds,
        clockFast,
        fade,
        wander);
  }

  /** The threshold of the code nearest to a voltage: {@code (c + 1) / 256} of the supply. */
  private static double threshold(double counts) {
    return 4 * Math.rint(counts / 4);
  }

  /** Ticks that the board counts in a second. */
  double ticksPerSecond() {
    return 16e6 * (1 + clockFast);
  }
}
