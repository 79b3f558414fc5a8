package org.halflight.stats;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How far the mean of a run may lie from the mean of many runs of an unchanged shutter, in squares
 * of the standard deviation {@code s} of one firing: {@code perFiring / n + ofRun}.
 *
 * <p>Firings one after another are alike, and a run as a whole lies off by what the shutter, the
 * hand and the warmth did that day. Neither can be known from two runs, so it is allowed for:
 * {@link #USUAL} covers neighbouring firings that are alike by a correlation of 0.3 and runs that
 * lie off by half a standard deviation, with some room. Only repeated runs of the same camera can
 * take its place.
 *
 * @param perFiring what firings alone bring to the variance of a mean, above zero; 1 where they are
 *     independent
 * @param ofRun what lies off in all firings of a run alike, zero or more
 * @param perFiringDegrees degrees of freedom of the first; infinite where it is stated
 * @param ofRunDegrees degrees of freedom of the second; infinite where it is stated
 * @param mostFirings from so many firings on the first part falls no further: nobody has seen
 *     longer runs
 */
public record MeanAllowance(
    double perFiring,
    double ofRun,
    double perFiringDegrees,
    double ofRunDegrees,
    int mostFirings) {
  /** Stated, not measured; docs/validation.md has what it is worth. */
  public static final MeanAllowance USUAL = new MeanAllowance(1.9, 0.3);

  /** Firings that have nothing to do with one another. */
  public static final MeanAllowance INDEPENDENT = new MeanAllowance(1, 0);

  /** Fewer repeated runs than this take no allowance's place. */
  public static final int LEAST_RUNS = 4;

  /** Fewer speeds than this do not show whether a run lies off as a whole. */
  public static final int LEAST_SPEEDS = 3;

  public MeanAllowance {
    if (!(perFiring > 0)
        || !(ofRun >= 0)
        || !(perFiringDegrees > 0)
        || !(ofRunDegrees > 0)
        || mostFirings < 1) {
      throw new IllegalArgumentException(perFiring + " a firing, " + ofRun + " a run");
    }
  }

  /** A stated allowance. */
  public MeanAllowance(double perFiring, double ofRun) {
    this(
        perFiring,
        ofRun,
        Double.POSITIVE_INFINITY,
        Double.POSITIVE_INFINITY,
        Integer.MAX_VALUE);
  }

  /**
   * What repeated runs of one unchanged camera show in place of {@link #USUAL}: how far their means
   * lie apart, speed by speed (what falls with the number of speeds) and all speeds together (what
   * does not).
   *
   * @param runs two or more; of each the firings of its speeds, the same speeds in the same order,
   *     two firings or more each
   * @return empty with fewer than {@value #LEAST_RUNS} runs or {@value #LEAST_SPEEDS} speeds, and
   *     where a speed's firings are all alike
   */
  public static Optional<MeanAllowance> ofRepeatedRuns(List<List<Sample>> runs) {
    int count = runs.size();
    int speeds = runs.isEmpty() ? 0 : runs.get(0).size();
    if (count < LEAST_RUNS || speeds < LEAST_SPEEDS) {
      return Optional.empty();
    }
    int firings =
        runs.stream().flatMap(List::stream).mapToInt(Sample::n).min().orElseThrow();
    double[] ofRuns = new double[count];
    double squares = 0;
    for (int speed = 0; speed < speeds; speed++) {
      int at = speed;
      List<Sample> samples = runs.stream().map(run -> run.get(at).first(firings)).toList();
      double sd = SharedScatter.within(samples).sd();
      if (!(sd > 0)) {
        return Optional.empty();
      }
      double[] means = samples.stream().mapToDouble(s -> s.mean().get() / sd).toArray();
      double centre = Arrays.stream(means).average().orElseThrow();
      for (int run = 0; run < count; run++) {
        double off = means[run] - centre;
        squares += off * off;
        ofRuns[run] += off / speeds;
      }
    }
    double together = Arrays.stream(ofRuns).map(off -> off * off).sum() / (count - 1);
    double apart =
        (squares - speeds * together * (count - 1)) / ((speeds - 1.0) * (count - 1));
    if (!(apart > 0)) {
      return Optional.empty();
    }
    return Optional.of(
        new MeanAllowance(
            firings * apart * (speeds - 1) / speeds,
            together,
            (speeds - 1.0) * (count - 1),
            count - 1,
            firings));
  }

  /** The first part for a mean of so many firings, in squares of s. */
  public double own(int firings) {
    return perFiring / Math.min(firings, mostFirings);
  }

  /** Both parts for a mean of so many firings, in squares of s. */
  public double ofMean(int firings) {
    return own(firings) + ofRun;
  }

  /**
   * Degrees of freedom of the variance of a mean.
   *
   * @param scatterDegrees degrees of freedom of s
   */
  public double degrees(int firings, double scatterDegrees) {
    double own = own(firings) / ofMean(firings);
    double run = ofRun / ofMean(firings);
    return 1
        / (1 / scatterDegrees + own * own / perFiringDegrees + run * run / ofRunDegrees);
  }
}
