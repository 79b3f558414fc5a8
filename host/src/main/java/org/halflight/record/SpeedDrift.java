package org.halflight.record;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.job.Run;
import org.halflight.job.Visit;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.SpeedSummary;

/**
 * One marked speed of a camera over all its visits.
 *
 * @param speed the marked speed
 * @param points what it came to in each run that fired it, in order of time
 */
public record SpeedDrift(MarkedSpeed speed, List<Point> points) {
  /** What the speed came to in one run. */
  public record Point(Visit visit, Run run, SpeedSummary summary) {}

  /**
   * The way from the end of one visit to the beginning of the next that fired this speed.
   *
   * @param left the last run as left, or the last run where there is none
   * @param found the first run as found, or the first run where there is none
   */
  public record Between(Point left, Point found) {
    /**
     * By how many stops the mean has moved, above zero is slower; empty where one of the two has
     * none. Whether that is more than scatter is not said here.
     */
    public OptionalDouble stops() {
      OptionalDouble before = left.summary().meanStops();
      OptionalDouble after = found.summary().meanStops();
      return before.isPresent() && after.isPresent()
          ? OptionalDouble.of(after.getAsDouble() - before.getAsDouble())
          : OptionalDouble.empty();
    }
  }

  public SpeedDrift {
    points = List.copyOf(points);
  }

  /** What happened between visits, one entry for each pair of visits that follow each other. */
  public List<Between> betweenVisits() {
    List<List<Point>> visits = new ArrayList<>();
    for (Point point : points) {
      boolean same =
          !visits.isEmpty()
              && visits.get(visits.size() - 1).get(0).visit().id().equals(point.visit().id());
      if (!same) {
        visits.add(new ArrayList<>());
      }
      visits.get(visits.size() - 1).add(point);
    }
    List<Between> between = new ArrayList<>();
    for (int i = 1; i < visits.size(); i++) {
      between.add(new Between(left(visits.get(i - 1)), found(visits.get(i))));
    }
    return between;
  }

  private static Point left(List<Point> visit) {
    Point last = visit.get(visit.size() - 1);
    return visit.stream()
        .filter(point -> point.summary().phase() == Phase.AS_LEFT)
        .reduce((a, b) -> b)
        .orElse(last);
  }

  private static Point found(List<Point> visit) {
    return visit.stream()
        .filter(point -> point.summary().phase() == Phase.AS_FOUND)
        .findFirst()
        .orElse(visit.get(0));
  }
}
