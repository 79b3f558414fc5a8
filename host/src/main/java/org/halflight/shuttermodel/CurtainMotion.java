package org.halflight.shuttermodel;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Where the edge of a curtain is, in millimetres from the start of the frame along the travel, by
 * the time since it was released. Before that it is where it began, after all it stays where it
 * came to rest. Immutable.
 */
public final class CurtainMotion {
  static final double STEP_SECONDS = 1e-5;

  /** Takes the places one after the other. */
  static final class Builder {
    private float[] places = new float[1 << 12];
    private int n;

    Builder(double first) {
      add(first);
    }

    void add(double millimetres) {
      if (n == places.length) {
        places = Arrays.copyOf(places, 2 * n);
      }
      places[n] = (float) millimetres;
      n++;
    }

    CurtainMotion motion() {
      return new CurtainMotion(Arrays.copyOf(places, n), STEP_SECONDS);
    }
  }

  private final float[] places;
  private final double stepSeconds;

  private CurtainMotion(float[] places, double stepSeconds) {
    this.places = places;
    this.stepSeconds = stepSeconds;
  }

  /** One that is gone from a frame long ago. */
  static CurtainMotion gone(double frameMillimetres) {
    return new CurtainMotion(new float[] {(float) (2 * frameMillimetres)}, STEP_SECONDS);
  }

  /** The same until it comes to a place, where it stays. */
  CurtainMotion stoppedAt(double millimetres) {
    int n = 1;
    while (n < places.length && places[n] < millimetres) {
      n++;
    }
    return new CurtainMotion(Arrays.copyOf(places, n), stepSeconds);
  }

  /** The same way in a share of its time. */
  CurtainMotion inShare(double share) {
    return new CurtainMotion(places, share * stepSeconds);
  }

  /** Where it is after a time. */
  public double at(double seconds) {
    double steps = seconds / stepSeconds;
    if (steps <= 0) {
      return places[0];
    }
    if (steps >= places.length - 1) {
      return places[places.length - 1];
    }
    int step = (int) steps;
    return places[step] + ((double) places[step + 1] - places[step]) * (steps - step);
  }

  /** When it rests. */
  public double endSeconds() {
    return (places.length - 1) * stepSeconds;
  }

  /** Where it rests. */
  public double restsAt() {
    return places[places.length - 1];
  }

  /** When it first comes to a place; empty where it never does. */
  public OptionalDouble reaches(double millimetres) {
    double[] passes = passes(millimetres);
    return passes.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(passes[0]);
  }

  /** The same, where it may begin beyond the place: then at once. */
  OptionalDouble comesTo(double millimetres) {
    return places[0] >= millimetres ? OptionalDouble.of(0) : reaches(millimetres);
  }

  /** All times at which it passes a place, onwards and back in turn. */
  double[] passes(double millimetres) {
    double[] found = new double[places.length];
    int n = 0;
    for (int i = 1; i < places.length; i++) {
      if (places[i - 1] < millimetres != places[i] < millimetres) {
        double part = (millimetres - places[i - 1]) / ((double) places[i] - places[i - 1]);
        found[n] = (i - 1 + part) * stepSeconds;
        n++;
      }
    }
    return Arrays.copyOf(found, n);
  }

  /** From edge to edge of a frame; infinite where it does not come so far. */
  double travelSeconds(double frameMillimetres) {
    OptionalDouble start = reaches(0);
    OptionalDouble end = reaches(frameMillimetres);
    return start.isPresent() && end.isPresent()
        ? end.getAsDouble() - start.getAsDouble()
        : Double.POSITIVE_INFINITY;
  }

  /** Its speed in mm/s when it first comes to a place that it does come to. */
  double speedAt(double millimetres) {
    double seconds = reaches(millimetres).orElseThrow();
    return (at(seconds + stepSeconds) - at(seconds - stepSeconds)) / (2 * stepSeconds);
  }
}
