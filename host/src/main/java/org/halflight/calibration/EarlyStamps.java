package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;

/**
 * Stamps on the side where no delay can put them: the host's clock was set, or a line was taken for
 * another. They are looked for below a line of median slopes, which a few of them do not bend.
 */
public final class EarlyStamps {
  /**
   * A stamp further below the line than so many median deviations is dropped. Exponential delays
   * reach 1.4 of them below the median, delays that are evenly spread 2.
   */
  public static final double MEDIAN_DEVIATIONS = 6;

  /** Closer to the line than this nothing is dropped: hosts stamp to some microseconds. */
  private static final double LEAST_SECONDS = 20e-6;

  /** With more stamps than this the line is made from every second, third ... of them. */
  private static final int MOST_FOR_LINE = 600;

  private EarlyStamps() {}

  /** The line of median slopes. */
  static ClockLine medianLine(List<ClockStamp> stamps) {
    int step = 1 + (stamps.size() - 1) / MOST_FOR_LINE;
    int n = 1 + (stamps.size() - 1) / step;
    double start = stamps.get(0).boardSeconds();
    double[] times = new double[n];
    double[] differences = new double[n];
    for (int i = 0; i < n; i++) {
      ClockStamp stamp = stamps.get(i * step);
      times[i] = stamp.boardSeconds() - start;
      differences[i] = stamp.differenceSeconds();
    }
    TheilSen.Line line = TheilSen.line(times, Sample.of(differences));
    return new ClockLine(line.slope(), line.intercept() - line.slope() * start);
  }

  /**
   * The stamps without those that no delay explains.
   *
   * @param stamps {@link TheilSen#LEAST} or more, board times rising
   */
  public static List<ClockStamp> dropped(List<ClockStamp> stamps, StampSide side) {
    ClockLine line = medianLine(stamps);
    int sign = side == StampSide.HOST_LATE ? 1 : -1;
    double[] late = new double[stamps.size()];
    double[] distances = new double[stamps.size()];
    for (int i = 0; i < late.length; i++) {
      ClockStamp stamp = stamps.get(i);
      late[i] = sign * (stamp.differenceSeconds() - line.at(stamp.boardSeconds()));
    }
    double middle = Sample.of(late).median().get();
    for (int i = 0; i < late.length; i++) {
      distances[i] = Math.abs(late[i] - middle);
    }
    double allowed =
        Math.max(LEAST_SECONDS, MEDIAN_DEVIATIONS * Sample.of(distances).median().get());
    List<ClockStamp> kept = new ArrayList<>();
    for (int i = 0; i < late.length; i++) {
      if (late[i] - middle >= -allowed) {
        kept.add(stamps.get(i));
      }
    }
    return kept;
  }
}
