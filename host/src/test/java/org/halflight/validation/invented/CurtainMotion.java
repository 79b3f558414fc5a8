package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the edge of one curtain is over time: places and speeds at even steps, cubic in between.
 *
 * @param stepSeconds from one place to the next; the first is the release
 * @param millimetres places, from the centre of the frame in the direction of travel
 * @param speeds likewise, in millimetres a second
 */
@SuppressWarnings("ArrayRecordComponent") // Handed on once and never compared.
public record CurtainMotion(double stepSeconds, double[] millimetres, double[] speeds) {
  /** Before its release a curtain waits, and at the end it stays. */
  double at(double seconds) {
    double steps = seconds / stepSeconds;
    if (steps <= 0) {
      return millimetres[0];
    }
    int i = (int) steps;
    if (i + 1 >= millimetres.length) {
      return millimetres[millimetres.length - 1];
    }
    return between(i, steps - i);
  }

  private double between(int i, double part) {
    double square = part * part;
    double cube = square * part;
    return (2 * cube - 3 * square + 1) * millimetres[i]
        + (cube - 2 * square + part) * stepSeconds * speeds[i]
        + (3 * square - 2 * cube) * millimetres[i + 1]
        + (cube - square) * stepSeconds * speeds[i + 1];
  }

  /** The same, slower by a factor. */
  CurtainMotion stretched(double by) {
    double[] slower = new double[speeds.length];
    for (int i = 0; i < slower.length; i++) {
      slower[i] = speeds[i] / by;
    }
    return new CurtainMotion(stepSeconds * by, millimetres, slower);
  }

  /** When it settles. */
  double endSeconds() {
    return stepSeconds * (millimetres.length - 1);
  }

  /** When it first passes a place; not a number where it never does. */
  public double passes(double place) {
    List<Double> all = passings(place);
    return all.isEmpty() ? Double.NaN : all.get(0);
  }

  /** All times at which it passes a place, forwards, back, forwards and so on. */
  List<Double> passings(double place) {
    List<Double> all = new ArrayList<>();
    for (int i = 0; i + 1 < millimetres.length; i++) {
      if ((millimetres[i] < place) != (millimetres[i + 1] < place)) {
        all.add(stepSeconds * (i + within(i, place)));
      }
    }
    return all;
  }

  private double within(int i, double place) {
    boolean rises = millimetres[i] < place;
    double low = 0;
    double high = 1;
    for (int turn = 0; turn < 40; turn++) {
      double middle = (low + high) / 2;
      if ((between(i, middle) < place) == rises) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
