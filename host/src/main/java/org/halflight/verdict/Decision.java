package org.halflight.verdict;

import java.util.OptionalInt;

/**
 * The decision on what a verdict is about, against a tolerance.
 *
 * @param verdict what is decided
 * @param guardStops the guard band at each limit, the wider one where they differ
 * @param conformity the chance that what is decided on lies within tolerance, by what is known; at
 *     least this, wherever the biases of the rig lie
 * @param furtherFirings how many more firings of this scatter would decide, if their number is
 *     fixed now and the mean stays; how many are missing where fewer were fired than planned; 0
 *     where it is decided, empty where no number up to {@link #MOST} would
 */
public record Decision(
    Verdict verdict, double guardStops, double conformity, OptionalInt furtherFirings) {
  /** More firings at one speed than this are not proposed. */
  public static final int MOST = 100;
}
