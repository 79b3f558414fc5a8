package org.halflight.validation.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One firing of an invented curtain shutter, as it truly was. Time counts from the release of the
 * first curtain.
 *
 * @param frame of the picture in the direction of travel, in millimetres
 * @param first from its release
 * @param second from its own
 * @param releaseSeconds of the second
 * @param apartMillimetres from the plane of the first curtain to that of the second
 */
public record CurtainShot(
    double frame,
    CurtainMotion first,
    CurtainMotion second,
    double releaseSeconds,
    double apartMillimetres) {
  /** Places over the frame at which the truth is known, edge to edge. */
  public static final int PLACES = 101;

  /**
   * What falls on one place of the film, in seconds of full light.
   *
   * @param main from the first opening to the first covering
   * @param late light after that
   * @param dip what the first curtain took away again before it
   */
  public record Exposure(double main, double late, double dip) {
    public double all() {
      return main + late;
    }
  }

  double firstAt(double seconds) {
    return first.at(seconds);
  }

  double secondAt(double seconds) {
    return second.at(seconds - releaseSeconds);
  }

  double endSeconds() {
    return Math.max(first.endSeconds(), releaseSeconds + second.endSeconds());
  }

  /** Where the places are, in millimetres from the centre in the direction of travel. */
  public double place(int number) {
    return frame * (number / (PLACES - 1.0) - 0.5);
  }

  /** What falls on each place of the frame. */
  public List<Exposure> exposures() {
    return IntStream.range(0, PLACES).mapToObj(i -> exposure(place(i))).toList();
  }

  /** What falls on one place. */
  public Exposure exposure(double place) {
    List<Double> opened = first.passings(place);
    List<Double> covered = new ArrayList<>();
    second.passings(place).forEach(at -> covered.add(at + releaseSeconds));
    if (opened.isEmpty()) {
      return new Exposure(0, 0, 0);
    }
    double end = endSeconds();
    double shuts = covered.isEmpty() ? end : covered.get(0);
    double opens = opened.get(0);
    double main = lit(opened, List.of(), Double.NEGATIVE_INFINITY, shuts);
    double dip = Math.max(0, shuts - opens) - main;
    return new Exposure(main, lit(opened, covered, shuts, end), dip);
  }

  /** For how long a place is free of both curtains between two times. */
  private static double lit(
      List<Double> opened, List<Double> covered, double fromSeconds, double toSeconds) {
    double sum = 0;
    for (int i = 0; i < opened.size(); i += 2) {
      double from = Math.max(fromSeconds, opened.get(i));
      double to = Math.min(toSeconds, i + 1 < opened.size() ? opened.get(i + 1) : toSeconds);
      if (to > from) {
        sum += to - from;
        for (int j = 0; j < covered.size(); j += 2) {
          double shut = j + 1 < covered.size() ? covered.get(j + 1) : toSeconds;
          sum -= Math.max(0, Math.min(to, shut) - Math.max(from, covered.get(j)));
        }
      }
    }
    return sum;
  }

  /** From one edge of the frame to the other. */
  public double firstTravelSeconds() {
    return travel(first);
  }

  /** Likewise. */
  public double secondTravelSeconds() {
    return travel(second);
  }

  private double travel(CurtainMotion motion) {
    return motion.passes(frame / 2) - motion.passes(-frame / 2);
  }

  /** From the first curtain clearing the end to the second leaving the start. */
  public double windowSeconds() {
    return releaseSeconds + second.passes(-frame / 2) - first.passes(frame / 2);
  }

  /** When the first curtain passes a place. */
  public double opensSeconds(double place) {
    return first.passes(place);
  }

  /** When the second one does. */
  public double coversSeconds(double place) {
    return releaseSeconds + second.passes(place);
  }
}
