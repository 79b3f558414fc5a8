package org.halflight.chart;

import java.util.List;

/**
 * Everything a speed map shows.
 *
 * @param title which camera or run
 * @param speeds from slow to fast, at least one
 * @param meanLevel confidence of the intervals of the means, above 0 and below 1
 * @param note where the numbers come from, printed at the foot; empty for none
 */
public record SpeedMapData(String title, List<SpeedColumn> speeds, double meanLevel, String note) {
  public SpeedMapData {
    speeds = List.copyOf(speeds);
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("a speed map has at least one marked speed");
    }
    if (!(meanLevel > 0 && meanLevel < 1)) {
      throw new IllegalArgumentException("a level is above 0 and below 1, not " + meanLevel);
    }
  }
}
