package org.halflight.verdict;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.halflight.exposure.Exposure;
import org.halflight.exposure.Exposure.Flag;
import org.halflight.session.AllTheLight;
import org.halflight.session.FiringResult;
import org.halflight.session.ReboundOfRun;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.stats.Sample;
import org.halflight.stored.StoredWords;

/**
 * The light of a speed, part by part, and whether anybody looked for a rebound that edges cannot
 * see.
 *
 * @param look whether anybody looked
 * @param ofRun the rebound that the run showed for this speed, in seconds of full light
 * @param measuredAt the speeds whose light curves showed that
 * @param mainSeconds mean effective time of the main openings; empty without timed firings
 * @param earlySeconds mean light before them, in seconds of full light
 * @param reboundSeconds mean light after them, likewise
 * @param addedSeconds how much of it only light curves saw: the times of the single firings are
 *     without it
 * @param boundSeconds how far off the mean of early light and rebound may be, plus or minus
 * @param errorsByEdges errors of the firings without what only light curves saw, in stops
 */
public record ReboundAtSpeed(
    Look look,
    OptionalDouble ofRun,
    List<MarkedSpeed> measuredAt,
    OptionalDouble mainSeconds,
    double earlySeconds,
    double reboundSeconds,
    double addedSeconds,
    double boundSeconds,
    Sample errorsByEdges) {
  /** Less light than this share of the main opening is not told from none. Our choice. */
  static final double LEAST_SHARE = 0.001;

  /**
   * Less light than this share of the main opening, 0.014 stop, counts in the time and is not worth
   * a sentence beside a verdict. Our choice.
   */
  public static final double SAID_SHARE = 0.01;

  /** Whether anybody looked for a rebound. */
  public enum Look {
    /** There was one, by edges or by a light curve. */
    SEEN,
    /** A light curve looked long enough, and there was none. */
    NONE,
    /** No light curve of the run lasted long enough, and edges saw none. */
    NOT_LOOKED_AT;

    /** As files store them. */
    public static final StoredWords<Look> WORDS =
        StoredWords.of(
            Look.class,
            look ->
                switch (look) {
                  case SEEN -> "seen";
                  case NONE -> "none";
                  case NOT_LOOKED_AT -> "not-looked-at";
                });
  }

  /** Of a model, whose light is known. */
  public static final ReboundAtSpeed OF_A_MODEL =
      new ReboundAtSpeed(
          Look.NONE,
          OptionalDouble.empty(),
          List.of(),
          OptionalDouble.empty(),
          0,
          0,
          0,
          0,
          Sample.of());

  public ReboundAtSpeed {
    measuredAt = List.copyOf(measuredAt);
  }

  /**
   * Of the good firings of one speed.
   *
   * @param run what their run showed
   */
  static ReboundAtSpeed of(MarkedSpeed speed, List<FiringResult> good, ReboundOfRun run) {
    OptionalDouble ofRun = run.secondsAt(speed);
    List<AllTheLight> light = good.stream().map(f -> AllTheLight.of(f, ofRun)).toList();
    double main = mean(light, AllTheLight::mainSeconds);
    double rebound = mean(light, AllTheLight::reboundSeconds);
    boolean byEdges = !good.isEmpty() && good.stream().allMatch(ReboundAtSpeed::isLate);
    Look look =
        !byEdges && ofRun.isEmpty()
            ? Look.NOT_LOOKED_AT
            : rebound > LEAST_SHARE * main ? Look.SEEN : Look.NONE;
    return new ReboundAtSpeed(
        look,
        ofRun,
        run.measuredFor(speed),
        light.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(main),
        mean(light, AllTheLight::earlySeconds),
        rebound,
        mean(light, AllTheLight::seconds)
            - good.stream()
                .mapToDouble(f -> f.effectiveSeconds().orElseThrow())
                .average()
                .orElse(0),
        mean(light, AllTheLight::boundSeconds),
        Sample.of(good.stream().mapToDouble(f -> f.errorStops().orElseThrow()).toArray()));
  }

  /** Whether a light curve saw light that edges did not. */
  boolean isByCurve() {
    return addedSeconds > 0;
  }

  /** The error of a timed firing of this speed with all its light, in stops. */
  public double errorStops(FiringResult firing) {
    return Stops.between(
        AllTheLight.of(firing, ofRun).seconds(), firing.referenceSeconds().orElseThrow());
  }

  private static boolean isLate(FiringResult firing) {
    return firing.exposure() instanceof Exposure.Timed timed
        && timed.flags().contains(Flag.LATE_LIGHT);
  }

  private static double mean(List<AllTheLight> light, ToDoubleFunction<AllTheLight> part) {
    return light.stream().mapToDouble(part).average().orElse(0);
  }
}
