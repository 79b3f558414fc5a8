package org.halflight.verdict;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.Place;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Interval;
import org.halflight.stats.Sample;

/**
 * What the firings of one marked speed say of the curtains. The first after a rest is in none of
 * the samples.
 *
 * @param speed the marked speed
 * @param wantedSeconds what it should be
 * @param figures samples of the figures that any firing has
 * @param capped at how many firings a place stayed dark while another saw light
 * @param firings how many there are, without the one after a rest
 * @param windowPlusMinusSeconds the most that the window of any of them is uncertain by
 */
public record CurtainSpeed(
    MarkedSpeed speed,
    double wantedSeconds,
    Map<CurtainFigure, Sample> figures,
    Map<Place, Integer> capped,
    int firings,
    double windowPlusMinusSeconds) {

  public CurtainSpeed {
    figures = Collections.unmodifiableMap(new EnumMap<>(figures));
    capped = Collections.unmodifiableMap(new EnumMap<>(capped));
  }

  /**
   * Of the firings of one speed.
   *
   * @param shots at least one, all of one speed
   */
  static CurtainSpeed of(List<CurtainShot> shots) {
    List<CurtainShot> settled = shots.stream().filter(shot -> !shot.afterRest()).toList();
    Map<CurtainFigure, Sample> figures = new EnumMap<>(CurtainFigure.class);
    for (CurtainFigure figure : CurtainFigure.values()) {
      double[] values =
          settled.stream().flatMapToDouble(shot -> figure.of(shot).stream()).toArray();
      if (values.length > 0) {
        figures.put(figure, Sample.of(values));
      }
    }
    Map<Place, Integer> capped = new EnumMap<>(Place.class);
    settled.forEach(
        shot -> shot.travel().capped().forEach(place -> capped.merge(place, 1, Integer::sum)));
    CurtainShot one = shots.get(0);
    return new CurtainSpeed(
        one.speed(),
        one.wantedSeconds(),
        figures,
        capped,
        settled.size(),
        settled.stream()
            .mapToDouble(shot -> shot.travel().windowPlusMinusSeconds())
            .max()
            .orElse(0));
  }

  /** The values of a figure; empty where no firing has it. */
  public Optional<Sample> sample(CurtainFigure figure) {
    return Optional.ofNullable(figures.get(figure));
  }

  /** The mean of a figure; empty where no firing has it. */
  public OptionalDouble mean(CurtainFigure figure) {
    return sample(figure)
        .map(sample -> OptionalDouble.of(sample.mean().get()))
        .orElse(OptionalDouble.empty());
  }

  /** Where the mean lies; empty with fewer than two firings. */
  public Optional<Interval> interval(CurtainFigure figure) {
    return sample(figure).flatMap(sample -> sample.meanInterval(SpeedSummary.LEVEL).known());
  }

  /**
   * Whether the mean of a figure is beyond a limit and its interval does not reach back to zero,
   * for one firing the mean alone.
   *
   * @param limit on the side to look at; not 0
   */
  boolean isBeyond(CurtainFigure figure, double limit) {
    OptionalDouble mean = mean(figure);
    return mean.isPresent()
        && (limit > 0 ? mean.getAsDouble() > limit : mean.getAsDouble() < limit)
        && interval(figure)
            .map(interval -> limit > 0 ? interval.low() > 0 : interval.high() < 0)
            .orElse(true);
  }
}
