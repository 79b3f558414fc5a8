package org.halflight.session;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toList;

import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.exposure.ReboundSeen;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;

/**
 * Whether anybody looked for a rebound in a run, and what there was: light curves that last long
 * enough after the closing. The blades close alike at all speeds, so one look serves all of them
 * (common practice, no source). Where two speeds were looked at and differ, each look serves its
 * own speed only.
 *
 * @param secondsAt the rebound of each marked speed that was looked at, in seconds of full light; 0
 *     where there was none
 */
public record ReboundOfRun(Map<MarkedSpeed, Double> secondsAt) {
  /**
   * Marked times up to this are asked for a look, in seconds: a rebound of 4 ms that edges cannot
   * see adds up to 0.08 stop at 1/125 and 0.28 stop at 1/500.
   */
  public static final double ASKED_UP_TO_SECONDS = 1 / 125.0;

  /** Rebounds of two speeds that differ by no more than this are alike, in seconds. Our choice. */
  static final double ALIKE_SECONDS = 0.1e-3;

  /** Or by no more than this share of the greater one. Our choice. */
  static final double ALIKE_SHARE = 0.3;

  /** Nobody looked. */
  public static final ReboundOfRun NOT_LOOKED_AT = new ReboundOfRun(Map.of());

  public ReboundOfRun {
    secondsAt = Map.copyOf(secondsAt);
  }

  /** What the good firings of one run show; the median of those of a speed. */
  public static ReboundOfRun of(List<FiringResult> firings) {
    Map<MarkedSpeed, List<Double>> seen =
        firings.stream()
            .filter(FiringResult::isGood)
            .filter(f -> f.shown().isPresent())
            .filter(f -> f.reboundSeen().filter(ReboundSeen::looked).isPresent())
            .collect(
                groupingBy(
                    f -> f.shown().orElseThrow(),
                    mapping(f -> f.reboundSeen().orElseThrow().afterSeconds(), toList())));
    Map<MarkedSpeed, Double> medians = new HashMap<>();
    seen.forEach((speed, seconds) -> medians.put(speed, Sample.of(seconds).median().get()));
    return new ReboundOfRun(medians);
  }

  /** Whether the speeds that were looked at have the same rebound; true also of one or none. */
  public boolean isAlike() {
    if (secondsAt.isEmpty()) {
      return true;
    }
    double most = Collections.max(secondsAt.values());
    double least = Collections.min(secondsAt.values());
    return most - least <= Math.max(ALIKE_SECONDS, ALIKE_SHARE * most);
  }

  /**
   * The rebound to reckon with at a speed, in seconds of full light: its own, or the mean of the
   * others where these are alike. Empty where nobody looked.
   */
  public OptionalDouble secondsAt(MarkedSpeed speed) {
    Double own = secondsAt.get(speed);
    if (own != null) {
      return OptionalDouble.of(own);
    }
    return isAlike()
        ? secondsAt.values().stream().mapToDouble(Double::doubleValue).average()
        : OptionalDouble.empty();
  }

  /** The speeds whose light curves tell the rebound to reckon with at a speed, slow to fast. */
  public List<MarkedSpeed> measuredFor(MarkedSpeed speed) {
    if (secondsAt.containsKey(speed)) {
      return List.of(speed);
    }
    return isAlike() ? lookedAt() : List.of();
  }

  /** The speeds that were looked at, slow to fast. */
  public List<MarkedSpeed> lookedAt() {
    return secondsAt.keySet().stream()
        .sorted(Comparator.comparingDouble(MarkedSpeed::literalSeconds).reversed())
        .toList();
  }

  /** Whether a verdict on a speed says so where nobody looked. */
  public static boolean isAskedFor(MarkedSpeed speed) {
    return speed.literalSeconds() <= ASKED_UP_TO_SECONDS;
  }
}
