package org.halflight.shuttermodel;

import java.util.OptionalDouble;

/**
 * Both curtains of a model shutter passing the frame once: the truth that a measurement should
 * find. Time zero is the release of the first curtain; places are in millimetres from the start of
 * the frame along the travel.
 *
 * @param frameMillimetres length of the frame
 * @param first motion of the first curtain, which opens
 * @param second motion of the second curtain, which covers
 * @param secondReleasedSeconds when the second is released; infinite where it is not
 */
public record CurtainPass(
    double frameMillimetres,
    CurtainMotion first,
    CurtainMotion second,
    double secondReleasedSeconds) {
  /** Where a second curtain catches the first up, or stops short, as a share of the frame. */
  private static final double CAUGHT_UP = 0.8;

  private static final double QUICKER = 0.9;

  /** Where the edge of the first curtain is. */
  public double firstAt(double seconds) {
    return first.at(seconds);
  }

  /** Where the edge of the second curtain is. */
  public double secondAt(double seconds) {
    return second.at(seconds - secondReleasedSeconds);
  }

  /** When the first curtain opens a place; empty where it does not come so far. */
  public OptionalDouble opensSeconds(double millimetres) {
    return first.reaches(millimetres);
  }

  /** When the second curtain covers a place; empty where it does not come so far. */
  public OptionalDouble coversSeconds(double millimetres) {
    OptionalDouble covers = second.reaches(millimetres);
    return covers.isEmpty() || Double.isInfinite(secondReleasedSeconds)
        ? OptionalDouble.empty()
        : OptionalDouble.of(secondReleasedSeconds + covers.getAsDouble());
  }

  /**
   * How long full light falls on a place, all bounce included: while the first curtain is beyond it
   * and the second is not. Infinite where the second never comes so far.
   */
  public double exposureSeconds(double millimetres) {
    double[] opens = first.passes(millimetres);
    double[] covers = second.passes(millimetres);
    if (opens.length % 2 == 1
        && (covers.length % 2 == 0 || Double.isInfinite(secondReleasedSeconds))) {
      return Double.POSITIVE_INFINITY;
    }
    double light = 0;
    for (int i = 0; i < opens.length; i += 2) {
      double end = i + 1 < opens.length ? opens[i + 1] : Double.POSITIVE_INFINITY;
      light += uncovered(opens[i], end, covers);
    }
    return light;
  }

  /** What of a span of time the second curtain leaves open. */
  private double uncovered(double from, double to, double[] covers) {
    double light = 0;
    double open = from;
    for (int i = 0; i < covers.length; i += 2) {
      double shuts = secondReleasedSeconds + covers[i];
      light += Math.max(0, Math.min(to, shuts) - open);
      double again =
          i + 1 < covers.length ? secondReleasedSeconds + covers[i + 1] : Double.POSITIVE_INFINITY;
      open = Math.max(open, again);
    }
    return Double.isInfinite(open) ? light : light + Math.max(0, to - open);
  }

  /** Travel of the first curtain from edge to edge; infinite where it stops short. */
  public double firstTravelSeconds() {
    return first.travelSeconds(frameMillimetres);
  }

  /** Travel of the second curtain from edge to edge; infinite where it stops short. */
  public double secondTravelSeconds() {
    return second.travelSeconds(frameMillimetres);
  }

  /**
   * The second curtain leaves the start of the frame less the first clears its end: below zero the
   * frame is never open as a whole. Infinite where one of them does not come so far.
   */
  public double windowSeconds() {
    return coversSeconds(0).orElse(Double.POSITIVE_INFINITY)
        - opensSeconds(frameMillimetres).orElse(Double.POSITIVE_INFINITY);
  }

  /** When both rest. */
  public double endSeconds() {
    return Double.isInfinite(secondReleasedSeconds)
        ? first.endSeconds()
        : Math.max(first.endSeconds(), secondReleasedSeconds + second.endSeconds());
  }

  /** The same without the second curtain. */
  public CurtainPass withoutSecond() {
    return new CurtainPass(frameMillimetres, first, second, Double.POSITIVE_INFINITY);
  }

  /** The same with a second curtain that stops near the end of the frame. */
  public CurtainPass stoppedShort() {
    return new CurtainPass(
        frameMillimetres,
        first,
        second.stoppedAt(CAUGHT_UP * frameMillimetres),
        secondReleasedSeconds);
  }

  /** The same with a second curtain that is let go so early that it catches up near the end. */
  public CurtainPass capped() {
    double caught = CAUGHT_UP * frameMillimetres;
    OptionalDouble opens = opensSeconds(caught);
    CurtainMotion quicker = second.inShare(QUICKER);
    OptionalDouble covers = quicker.reaches(caught);
    return opens.isEmpty() || covers.isEmpty()
        ? this
        : new CurtainPass(
            frameMillimetres, first, quicker, opens.getAsDouble() - covers.getAsDouble());
  }
}
