package org.halflight.verdict;

import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.MeanShift;
import org.halflight.stats.Student;

/**
 * The shift of one speed's mean with what it is uncertain by, in stops.
 *
 * @param speed the marked speed
 * @param stops later less earlier mean
 * @param ownVariance by the firings of this speed alone
 * @param runVariance by what a run may have lain off at all speeds
 * @param rigVariance by two rigs; zero where both runs were made with one
 * @param scatterDegrees degrees of freedom of the first two
 */
record Estimate(
    MarkedSpeed speed,
    double stops,
    double ownVariance,
    double runVariance,
    double rigVariance,
    double scatterDegrees) {
  Estimate {
    if (!Double.isFinite(stops)
        || !(ownVariance > 0)
        || !(runVariance >= 0)
        || !(rigVariance >= 0)
        || !(scatterDegrees > 0)) {
      throw new IllegalArgumentException(
          stops + " stops, variances " + ownVariance + ", " + runVariance + ", " + rigVariance);
    }
  }

  double standardError() {
    return Math.sqrt(ownVariance + runVariance + rigVariance);
  }

  /** By Welch and Satterthwaite; what a rig may be off by has endless degrees of freedom. */
  double degreesOfFreedom() {
    double share = (ownVariance + runVariance) / (ownVariance + runVariance + rigVariance);
    return scatterDegrees / (share * share);
  }

  MeanShift shift() {
    return MeanShift.of(stops, standardError(), degreesOfFreedom(), SpeedSummary.LEVEL);
  }

  /** The chance of a shift at least so far from another where that other is the true one. */
  double pAgainst(double other) {
    double t = (stops - other) / standardError();
    return 2 * Student.below(-Math.abs(t), degreesOfFreedom());
  }
}
