package org.halflight.shuttermodel;

/**
 * The output of a one-pole lag while its input follows a straight line: {@code y = a + b (t - tau)
 * + (y0 - a + b tau) exp(-t / tau)} for an input {@code a + b t} and a start at {@code y0}, the
 * textbook solution of {@code tau y' + y = a + b t}.
 *
 * @param start input at the start, a
 * @param slope slope of the input a second, b
 * @param startOutput output at the start, y0
 * @param lagSeconds tau, 0 or more
 */
record LaggedLine(double start, double slope, double startOutput, double lagSeconds) {
  /** The output after a time in seconds, 0 or more. */
  double at(double seconds) {
    if (lagSeconds == 0) {
      return start + slope * seconds;
    }
    return start
        + slope * (seconds - lagSeconds)
        + (startOutput - start + slope * lagSeconds) * StrictMath.exp(-seconds / lagSeconds);
  }

  /** The slope of the output after a time in seconds. */
  double slopeAt(double seconds) {
    if (lagSeconds == 0) {
      return slope;
    }
    double transient0 = startOutput - start + slope * lagSeconds;
    return slope - transient0 / lagSeconds * StrictMath.exp(-seconds / lagSeconds);
  }

  /** When the output turns round, or NaN when it never does. */
  double turnSeconds() {
    if (lagSeconds == 0 || slope == 0) {
      return Double.NaN;
    }
    double ratio = (startOutput - start + slope * lagSeconds) / (slope * lagSeconds);
    return ratio > 1 ? lagSeconds * StrictMath.log(ratio) : Double.NaN;
  }
}
