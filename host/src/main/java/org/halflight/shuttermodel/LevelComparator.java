package org.halflight.shuttermodel;

/**
 * A comparator that is not quite ideal: it switches beside its threshold, at another place on the
 * way up than on the way down, and the later the more slowly the voltage goes past.
 *
 * <p>The delay is that of an input stage that has to gather a charge: the integral of the overdrive
 * over time reaches {@code gatherMillivoltMicroseconds}. Past a threshold with slope {@code s} this
 * takes {@code sqrt(2 K / s)}, after a step of overdrive {@code v} it takes {@code K / v}. That
 * data sheets show a delay that falls with overdrive is common; this law is our own simplification.
 *
 * @param offsetMillivolts how far above its threshold it switches, the mean of both ways
 * @param hysteresisMillivolts how much higher it switches on rising than on falling light, 0 or
 *     more
 * @param delayMicroseconds its delay at large overdrive, 0 or more
 * @param gatherMillivoltMicroseconds what a small overdrive adds, 0 or more
 */
public record LevelComparator(
    double offsetMillivolts,
    double hysteresisMillivolts,
    double delayMicroseconds,
    double gatherMillivoltMicroseconds) {
  /** Switches at once where its threshold stands. */
  public static final LevelComparator IDEAL = new LevelComparator(0, 0, 0, 0);

  /** Nothing stands still so exactly on a threshold that noise would not carry it over by then. */
  private static final double GATHERING_MICROSECONDS_MOST = 100;

  public LevelComparator {
    if (!Double.isFinite(offsetMillivolts)
        || !(hysteresisMillivolts >= 0)
        || !(delayMicroseconds >= 0)
        || !(gatherMillivoltMicroseconds >= 0)) {
      throw new IllegalArgumentException("hysteresis and delay of a comparator are 0 or more");
    }
  }

  /** The light in millivolts above which it switches on, for a threshold. */
  public double onMillivolts(double thresholdMillivolts) {
    return thresholdMillivolts + offsetMillivolts + hysteresisMillivolts / 2;
  }

  /** The light in millivolts at which it switches off, for a threshold. */
  public double offMillivolts(double thresholdMillivolts) {
    return thresholdMillivolts + offsetMillivolts - hysteresisMillivolts / 2;
  }

  /** Whether it is on in some light, having been on or off before. */
  public boolean isOn(double millivolts, double thresholdMillivolts, boolean before) {
    return before
        ? millivolts > offMillivolts(thresholdMillivolts)
        : millivolts > onMillivolts(thresholdMillivolts);
  }

  /** Its delay in seconds behind a crossing with this slope; infinite slopes have no addition. */
  public double delaySeconds(double millivoltsPerSecond) {
    double perMicrosecond = Math.abs(millivoltsPerSecond) * 1e-6;
    double gathering =
        gatherMillivoltMicroseconds == 0
            ? 0
            : Math.min(
                GATHERING_MICROSECONDS_MOST,
                Math.sqrt(2 * gatherMillivoltMicroseconds / perMicrosecond));
    return (delayMicroseconds + gathering) * 1e-6;
  }
}
