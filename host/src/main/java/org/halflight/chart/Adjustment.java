package org.halflight.chart;

/**
 * Work on the shutter between two releases of a row.
 *
 * @param beforeRelease the number, from 1, of the first release after it
 * @param words what was done, short
 */
public record Adjustment(int beforeRelease, String words) {
  public Adjustment {
    if (beforeRelease < 1) {
      throw new IllegalArgumentException("releases count from 1: " + beforeRelease);
    }
  }
}
