package org.halflight.validation.invented;

/** Kinds of blades, of which each session draws its own. */
public enum Blades {
  /** A round hole whose radius grows and shrinks evenly. */
  ROUND_EVEN("round hole, even") {
    @Override
    Light drawn(double open, double shut, double fall, Draws draws) {
      return light(Hole.ROUND, Motion.EVEN, Motion.EVEN, open, shut, fall);
    }
  },
  /** A round hole whose blades start from rest; they shut as they open, seen backwards. */
  ROUND_ACCELERATING("round hole, accelerating") {
    @Override
    Light drawn(double open, double shut, double fall, Draws draws) {
      return light(Hole.ROUND, new Motion(2, false), new Motion(2, true), open, shut, fall);
    }
  },
  /** Five points whose blades come to rest on both ways. */
  STAR_BRAKING("star of five, braking") {
    @Override
    Light drawn(double open, double shut, double fall, Draws draws) {
      Motion toRest = new Motion(2, true);
      return light(Hole.STAR, toRest, toRest, open, shut, fall);
    }
  },
  /** Any power of the time, another one on each way. */
  UNLIKE_POWERS("unlike powers of time") {
    @Override
    Light drawn(double open, double shut, double fall, Draws draws) {
      return light(Hole.EVEN_AREA, any(draws), any(draws), open, shut, fall);
    }
  };

  private static final double LEAST_RAMP_SECONDS = 0.6e-3;
  private static final double GREATEST_RAMP_SECONDS = 1.0e-3;
  private static final double LEAST_OPEN_PART = 0.05;

  private final String words;

  Blades(String words) {
    this.words = words;
  }

  /** What they are called. */
  public String words() {
    return words;
  }

  abstract Light drawn(double open, double shut, double fall, Draws draws);

  /**
   * Blades of this kind that open fully.
   *
   * @param leastSeconds the shortest exposure that they are to make
   */
  Light drawn(double leastSeconds, double fall, Draws draws) {
    double open = draws.between(LEAST_RAMP_SECONDS, GREATEST_RAMP_SECONDS);
    double shut = open * draws.between(0.7, 1.4);
    Light light = drawn(open, shut, fall, draws);
    double most = (1 - LEAST_OPEN_PART) * leastSeconds;
    double shrunk = Math.min(1, most / light.trueSeconds());
    return light(
        light.hole(), light.opening(), light.closing(), shrunk * open, shrunk * shut, fall);
  }

  private static Light light(
      Hole hole, Motion opening, Motion closing, double open, double shut, double fall) {
    return Light.plain(hole, opening, closing, open, 0, shut, fall);
  }

  private static Motion any(Draws draws) {
    return new Motion(0.5 * Math.pow(8, draws.between(0, 1)), draws.coin());
  }
}
