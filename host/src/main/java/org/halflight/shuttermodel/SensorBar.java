package org.halflight.shuttermodel;

import java.util.Arrays;

/**
 * Where the three sensors are behind the gate and what lights them: each sits behind a slit, at a
 * distance behind the curtains, and sees a lamp of some size. What it sees of a curtain's edge is
 * spread over the width of its slit and of the lamp's image on the curtain, each of them even.
 *
 * @param outerMillimetres from the centre to each outer sensor, at the sensors
 * @param slitMillimetres width of the slits along the travel
 * @param gapMillimetres from the curtains to the sensors
 * @param lampMillimetres from the sensors to the lamp
 * @param lampWidthMillimetres width of the lamp along the travel
 * @param order in which the curtains come to the sensors
 */
public record SensorBar(
    double outerMillimetres,
    double slitMillimetres,
    double gapMillimetres,
    double lampMillimetres,
    double lampWidthMillimetres,
    Order order) {
  /** Which sensor is where, in the direction of travel. */
  public enum Order {
    A_FIRST,
    B_FIRST,
    /** The plugs of the centre and of A are exchanged. */
    CENTRE_FIRST
  }

  private static final double LENS_MILLIMETRES = 50;
  private static final double LENS_F_NUMBER = 2.8;

  /** Points of a light path lie so close where a curtain passes. */
  private static final double STEP_SECONDS = 5e-6;

  public SensorBar {
    if (!(outerMillimetres > 0)
        || !(slitMillimetres >= 0)
        || !(gapMillimetres >= 0)
        || !(lampMillimetres > gapMillimetres)
        || !(lampWidthMillimetres >= 0)) {
      throw new IllegalArgumentException("sensors lie behind the curtains and the lamp before");
    }
  }

  /** Outer sensors at 45 % of the frame, usual slits, a lamp small and far enough. */
  public static SensorBar usual(double frameMillimetres) {
    return new SensorBar(0.45 * frameMillimetres, 0.5, 5, 300, 10, Order.A_FIRST);
  }

  /** The same with the sensors in another order. */
  public SensorBar in(Order another) {
    return new SensorBar(
        outerMillimetres,
        slitMillimetres,
        gapMillimetres,
        lampMillimetres,
        lampWidthMillimetres,
        another);
  }

  /** The same with the lamp elsewhere. */
  public SensorBar withLamp(double millimetres) {
    return new SensorBar(
        outerMillimetres,
        slitMillimetres,
        gapMillimetres,
        millimetres,
        lampWidthMillimetres,
        order);
  }

  /** The same behind a lens of 50 mm at f/2.8, whose pupil is the lamp then. */
  public SensorBar behindLens() {
    return new SensorBar(
        outerMillimetres,
        slitMillimetres,
        gapMillimetres,
        LENS_MILLIMETRES,
        LENS_MILLIMETRES / LENS_F_NUMBER,
        order);
  }

  /** How much a length at the sensors shrinks at the curtains: the lamp is a point by then. */
  public double shrinks() {
    return 1 - gapMillimetres / lampMillimetres;
  }

  /** What the sensors see of a pass of the curtains. */
  public LightPaths light(CurtainPass pass) {
    double middle = pass.frameMillimetres() / 2;
    double out = outerMillimetres * shrinks();
    LightPath start = light(pass, middle - out);
    LightPath end = light(pass, middle + out);
    LightPath centre = light(pass, middle);
    return switch (order) {
      case A_FIRST -> new LightPaths(centre, start, end);
      case B_FIRST -> new LightPaths(centre, end, start);
      case CENTRE_FIRST -> new LightPaths(start, centre, end);
    };
  }

  private LightPath light(CurtainPass pass, double place) {
    double still = pass.first().endSeconds();
    double again = Math.min(pass.secondReleasedSeconds(), pass.endSeconds());
    double waits = Math.max(0, again - still - 2 * STEP_SECONDS);
    int steps = (int) Math.ceil((pass.endSeconds() - waits) / STEP_SECONDS);
    double[] seconds = new double[steps + 1];
    double[] open = new double[steps + 1];
    int n = 0;
    for (int i = 0; i <= steps; i++) {
      // Nothing moves between the first curtain's rest and the release of the second.
      double at = i * STEP_SECONDS <= still ? i * STEP_SECONDS : i * STEP_SECONDS + waits;
      double light =
          Math.max(0, share(pass.firstAt(at) - place) - share(pass.secondAt(at) - place));
      // Of a stretch of the same light the two ends are enough.
      boolean goesOn = n >= 2 && open[n - 1] == light && open[n - 2] == light;
      n = goesOn ? n : n + 1;
      seconds[n - 1] = at;
      open[n - 1] = light;
    }
    return new LightPath(Arrays.copyOf(seconds, n), Arrays.copyOf(open, n));
  }

  /** How much of what the sensor sees lies behind an edge that is so far beyond its middle. */
  private double share(double beyond) {
    double slit = slitMillimetres * shrinks();
    double lamp = lampWidthMillimetres * gapMillimetres / lampMillimetres;
    double wide = Math.max(slit, lamp);
    double narrow = Math.min(slit, lamp);
    if (Math.abs(beyond) >= (wide + narrow) / 2) {
      return beyond > 0 ? 1 : 0;
    }
    if (narrow == 0) {
      return beyond / wide + 0.5;
    }
    // The mean over the narrow one of what the wide one lets through.
    return (mean((beyond + narrow / 2) / wide + 0.5) - mean((beyond - narrow / 2) / wide + 0.5))
        * wide
        / narrow;
  }

  /** The integral up to there of what rises from 0 to 1 and stays. */
  private static double mean(double x) {
    return x <= 0 ? 0 : x >= 1 ? x - 0.5 : x * x / 2;
  }
}
