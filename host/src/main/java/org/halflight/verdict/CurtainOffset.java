package org.halflight.verdict;

import java.util.List;
import java.util.Optional;

/**
 * The time at the centre less the wanted time, over the marked times of the slit speeds, as a
 * straight line: what is alike at all of them comes from a latch or the set slit, what grows with
 * the time from the speed of the curtains.
 *
 * @param offsetSeconds the part that is alike
 * @param rateShare the part that grows, as a share of the marked time
 * @param offsetPlusMinusSeconds twice its standard error, and no less than measuring allows
 * @param ratePlusMinusShare the same of the share
 * @param speeds how many the line goes through; two leave no residual
 */
public record CurtainOffset(
    double offsetSeconds,
    double rateShare,
    double offsetPlusMinusSeconds,
    double ratePlusMinusShare,
    int speeds) {
  /** A mean at the centre is no surer than this share of its time, and this: our own limits. */
  private static final double LEAST_SHARE = 0.005;

  private static final double LEAST_SECONDS = 5e-6;

  /** One speed of the line. */
  record Point(double markedSeconds, double excessSeconds, double standardErrorSeconds) {}

  /** Through the slit speeds; empty with fewer than two. */
  static Optional<CurtainOffset> of(List<CurtainSpeed> slitSpeeds) {
    return through(slitSpeeds.stream().flatMap(speed -> point(speed).stream()).toList());
  }

  static Optional<CurtainOffset> through(List<Point> points) {
    double weight = 0;
    double x = 0;
    double y = 0;
    double xx = 0;
    double xy = 0;
    for (Point point : points) {
      double w = 1 / (point.standardErrorSeconds() * point.standardErrorSeconds());
      weight += w;
      x += w * point.markedSeconds();
      y += w * point.excessSeconds();
      xx += w * point.markedSeconds() * point.markedSeconds();
      xy += w * point.markedSeconds() * point.excessSeconds();
    }
    double determinant = weight * xx - x * x;
    if (points.size() < 2 || !(determinant > 1e-9 * weight * xx)) {
      return Optional.empty();
    }
    double rate = (weight * xy - x * y) / determinant;
    double offset = (y - rate * x) / weight;
    double squares = 0;
    for (Point point : points) {
      double residual = point.excessSeconds() - offset - rate * point.markedSeconds();
      squares +=
          residual * residual / (point.standardErrorSeconds() * point.standardErrorSeconds());
    }
    double spread = points.size() > 2 ? Math.max(1, Math.sqrt(squares / (points.size() - 2))) : 1;
    return Optional.of(
        new CurtainOffset(
            offset,
            rate,
            2 * spread * Math.sqrt(xx / determinant),
            2 * spread * Math.sqrt(weight / determinant),
            points.size()));
  }

  private static Optional<Point> point(CurtainSpeed speed) {
    return speed
        .sample(CurtainFigure.EXCESS)
        .map(
            sample -> {
              double scatter = sample.sd().known().orElse(0.0) / Math.sqrt(sample.n());
              double least = Math.hypot(LEAST_SHARE * speed.wantedSeconds(), LEAST_SECONDS);
              return new Point(
                  speed.wantedSeconds(), sample.mean().get(), Math.hypot(scatter, least));
            });
  }
}
