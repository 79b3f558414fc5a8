package org.halflight.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.halflight.profile.ClockRate;
import org.halflight.stats.Sample;

/**
 * The rate of a board's clock against the clock of the host, from stamps with one-sided delays.
 *
 * <p>The rate is the hull line's, the line of median slopes is its cross-check, and the uncertainty
 * is the greater of two: {@code 7.0 mu / (N T)}, which simulation gives for exponential delays of
 * mean mu (docs/validation.md), and the scatter of the rate when blocks of the found delays are
 * dealt anew. The clock of the host itself is not in it.
 *
 * @param fastPpm by how many parts in a million the board is fast
 * @param standardUncertaintyPpm of that
 * @param medianFastPpm the same by median slopes
 * @param medianStandardUncertaintyPpm of that, by the same dealing
 * @param meanDelaySeconds mean distance of the stamps from the hull line
 * @param stamps how many were used
 * @param dropped how many were left out because no delay explains them
 * @param spanSeconds from the first to the last
 */
public record ClockFit(
    double fastPpm,
    double standardUncertaintyPpm,
    double medianFastPpm,
    double medianStandardUncertaintyPpm,
    double meanDelaySeconds,
    int stamps,
    int dropped,
    double spanSeconds) {
  /** Least stamps. */
  public static final int LEAST = 20;

  /** Stamps that follow each other within a stall of the host belong together. */
  private static final int BLOCK = 5;

  private static final double GREATEST_PPM = 20_000;
  private static final int DEALINGS = 100;
  private static final long SEED = 1999;

  /** What stamps come to. */
  public sealed interface Outcome {}

  /** A rate. */
  public record Fitted(ClockFit fit) implements Outcome {}

  /**
   * Not enough stamps.
   *
   * @param stamps how many there are
   */
  public record TooFew(int stamps) implements Outcome {}

  /** Hull and median slopes disagree beyond their uncertainties: some stamps are wrong. */
  public record Contradiction(ClockFit fit) implements Outcome {}

  /**
   * @param stamps board times rising
   */
  public static Outcome of(List<ClockStamp> stamps, StampSide side) {
    if (stamps.size() < LEAST) {
      return new TooFew(stamps.size());
    }
    List<ClockStamp> kept = EarlyStamps.dropped(stamps, side);
    ClockLine hull = HullLine.of(kept, side);
    ClockLine median = EarlyStamps.medianLine(kept);
    double[] late = new double[kept.size()];
    for (int i = 0; i < late.length; i++) {
      late[i] = kept.get(i).differenceSeconds() - hull.at(kept.get(i).boardSeconds());
    }
    double meanDelay = Math.abs(Sample.of(late).mean().get());
    double span = kept.get(kept.size() - 1).boardSeconds() - kept.get(0).boardSeconds();
    Dealt dealt = Dealt.of(kept, hull, late, side);
    double formula = 7.0e6 * meanDelay / (kept.size() * span);
    ClockFit fit =
        new ClockFit(
            hull.boardFastPpm(),
            Math.max(formula, dealt.hullPpm()),
            median.boardFastPpm(),
            dealt.medianPpm(),
            meanDelay,
            kept.size(),
            stamps.size() - kept.size(),
            span);
    double joint = Math.hypot(fit.standardUncertaintyPpm(), fit.medianStandardUncertaintyPpm());
    // No clock of a board is off by so much: the stamps are not of two clocks that run.
    return Math.abs(fit.fastPpm()) > GREATEST_PPM
            || Math.abs(fit.fastPpm() - fit.medianFastPpm()) > 4 * joint
        ? new Contradiction(fit)
        : new Fitted(fit);
  }

  /**
   * As a rate for a profile.
   *
   * @param hostStandardUncertaintyPpm of the clock of the host itself
   */
  public ClockRate rate(double hostStandardUncertaintyPpm) {
    return new ClockRate(
        fastPpm,
        Math.hypot(standardUncertaintyPpm, hostStandardUncertaintyPpm),
        Double.POSITIVE_INFINITY,
        ClockRate.Source.HOST_CLOCK);
  }

  /** Scatter of both slopes when blocks of the delays are dealt anew (block bootstrap). */
  private record Dealt(double hullPpm, double medianPpm) {
    static Dealt of(List<ClockStamp> stamps, ClockLine line, double[] late, StampSide side) {
      SplittableRandom random = new SplittableRandom(SEED);
      int n = late.length;
      int block = Math.min(BLOCK, n / 4);
      // Median slopes go with the square of the stamps: they are thinned, and their scatter scaled.
      int step = 1 + (n - 1) / 100;
      double[] hulls = new double[DEALINGS];
      double[] medians = new double[DEALINGS];
      for (int dealing = 0; dealing < DEALINGS; dealing++) {
        List<ClockStamp> again = new ArrayList<>(n);
        int from = 0;
        for (int i = 0; i < n; i++) {
          if (i % block == 0) {
            from = random.nextInt(n - block + 1);
          }
          double board = stamps.get(i).boardSeconds();
          again.add(new ClockStamp(board, board + line.at(board) + late[from + i % block]));
        }
        hulls[dealing] = 1e6 * HullLine.of(again, side).slope();
        List<ClockStamp> thinned = new ArrayList<>();
        for (int i = 0; i < n; i += step) {
          thinned.add(again.get(i));
        }
        medians[dealing] = 1e6 * EarlyStamps.medianLine(thinned).slope();
      }
      return new Dealt(
          Sample.of(hulls).sd().get(), Sample.of(medians).sd().get() / Math.sqrt(step));
    }
  }
}
