package org.halflight.shuttermodel;

/**
 * How the blades of a model shutter open and close, by time.
 *
 * @param opening law of the opening
 * @param openingMillis time of a full opening, above zero
 * @param closing law of the closing, read backwards from dark
 * @param closingMillis time of a full closing, above zero
 */
public record BladeStroke(
    OpeningLaw opening, double openingMillis, OpeningLaw closing, double closingMillis) {
  /** Straight lines to a stroke. Their sag is below 2e-5 of full light for every blade law. */
  static final int LINES = 128;

  public BladeStroke {
    if (!(openingMillis > 0) || !(closingMillis > 0)) {
      throw new IllegalArgumentException("opening and closing take time");
    }
  }

  /** The opening up to a part of the blades' way by time (1 is fully open), first light at 0 s. */
  LightPath openingTo(double way) {
    double[] seconds = new double[LINES + 1];
    double[] open = new double[LINES + 1];
    for (int i = 0; i <= LINES; i++) {
      double s = way * i / LINES;
      seconds[i] = s * openingMillis * 1e-3;
      open[i] = opening.openFraction(s);
    }
    return new LightPath(seconds, open);
  }

  /** The closing from a light, the start of closing at 0 s. */
  LightPath closingFrom(double light) {
    double way = wayTo(closing, light);
    double[] seconds = new double[LINES + 1];
    double[] open = new double[LINES + 1];
    for (int i = 0; i <= LINES; i++) {
      seconds[i] = way * i / LINES * closingMillis * 1e-3;
      open[i] = closing.openFraction(way * (LINES - i) / LINES);
    }
    open[0] = light;
    open[LINES] = 0;
    return new LightPath(seconds, open);
  }

  /** The part of the opening, by time, after which a light is reached. */
  double openingWayTo(double light) {
    return wayTo(opening, light);
  }

  /** Bisection down to neighbouring numbers; the laws rise without a gap. */
  private static double wayTo(OpeningLaw law, double light) {
    if (light >= 1) {
      return 1;
    }
    double below = 0;
    double above = 1;
    while (true) {
      double middle = (below + above) / 2;
      if (middle <= below || middle >= above) {
        return above;
      }
      if (law.openFraction(middle) < light) {
        below = middle;
      } else {
        above = middle;
      }
    }
  }
}
