package org.halflight.verdict;

import org.halflight.stats.Figure;
import org.halflight.stats.GeneralisedEsd;
import org.halflight.stats.Interval;
import org.halflight.stats.MannKendall;
import org.halflight.stats.Sample;
import org.halflight.stats.TheilSen;
import org.halflight.stats.ToleranceInterval;

/**
 * Everything that the firings of one marked speed carry, in stops; each figure is known or says how
 * many firings it wants. The first firing after rest is in none of them: it stands by itself in the
 * summary.
 *
 * @param summary what the firings came to
 * @param mean error
 * @param median error
 * @param scatter standard deviation of one firing
 * @param robustScatter the same from the median deviation
 * @param meanInterval where the mean lies, with confidence {@link SpeedSummary#LEVEL}
 * @param oneExposure where {@link #CONTENT} of all single exposures lie, with confidence {@link
 *     SpeedSummary#LEVEL}
 * @param creep the change from firing to firing, in stops a firing
 * @param creepTest whether there is such a change
 * @param outliers firings that do not belong with the others; none is ever left out for that
 */
public record SpeedStatistics(
    SpeedSummary summary,
    Figure<Double> mean,
    Figure<Double> median,
    Figure<Double> scatter,
    Figure<Double> robustScatter,
    Figure<Interval> meanInterval,
    Figure<ToleranceInterval> oneExposure,
    Figure<TheilSen> creep,
    Figure<MannKendall> creepTest,
    Figure<GeneralisedEsd> outliers) {
  /** The part of single exposures that {@link #oneExposure} holds. */
  public static final double CONTENT = 0.9;

  /** Chance of seeing a creep or an outlier where there is none, at one speed. */
  public static final double ALPHA = 0.05;

  /** Outliers are looked for among a fifth of the firings at most. */
  private static final int FIRINGS_PER_OUTLIER = 5;

  /** The statistics of the firings of a summary. */
  public static SpeedStatistics of(SpeedSummary summary) {
    Sample errors = summary.errors();
    int atMost = Math.max(1, Math.min(GeneralisedEsd.MOST, errors.n() / FIRINGS_PER_OUTLIER));
    return new SpeedStatistics(
        summary,
        errors.mean(),
        errors.median(),
        errors.sd(),
        errors.robustSpread(),
        errors.meanInterval(SpeedSummary.LEVEL),
        ToleranceInterval.of(errors, CONTENT, SpeedSummary.LEVEL),
        TheilSen.ofOrder(errors, SpeedSummary.LEVEL),
        MannKendall.of(errors),
        GeneralisedEsd.of(errors, atMost, ALPHA));
  }

  /** Whether the firings are shown to become slower or faster one after the other. */
  public boolean creeps() {
    return creepTest.known().filter(test -> test.p() <= ALPHA).isPresent();
  }

  /** How many firings do not belong with the others; 0 also where that is not known. */
  public int outlierCount() {
    return outliers.known().map(GeneralisedEsd::outliers).orElse(0);
  }
}
