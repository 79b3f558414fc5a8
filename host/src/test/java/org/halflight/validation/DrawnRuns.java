package org.halflight.validation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;

/**
 * Runs whose errors are drawn, firing by firing, from laws that no shutter model of the program
 * knows: neighbouring firings that are alike, runs that lie off as a whole, warm-up, creep.
 */
final class DrawnRuns {
  /** The modern dial, slow to fast. */
  static final List<MarkedSpeed> DIAL =
      List.of("1", "1/2", "1/4", "1/8", "1/15", "1/30", "1/60", "1/125", "1/250", "1/500").stream()
          .map(MarkedSpeed::parse)
          .toList();

  /**
   * What the firings of a run depend on.
   *
   * @param alike correlation of a firing with the one before it at the same speed
   * @param runInSds how far a run lies off at each speed by itself, standard deviation in those of
   *     one firing
   * @param wholeRunInSds how far it lies off at all speeds together, likewise
   * @param warmUpStops how slow the very first firing of the run is
   * @param warmUpFirings after so many firings a third of that is left
   * @param creepStops from each firing of a speed to the next
   */
  record Law(
      double alike,
      double runInSds,
      double wholeRunInSds,
      double warmUpStops,
      double warmUpFirings,
      double creepStops) {
    static final Law INDEPENDENT = new Law(0, 0, 0, 0, 1, 0);

    Law alike(double correlation) {
      return new Law(correlation, runInSds, wholeRunInSds, warmUpStops, warmUpFirings, creepStops);
    }

    Law runs(double inSds) {
      return new Law(alike, inSds, wholeRunInSds, warmUpStops, warmUpFirings, creepStops);
    }

    Law wholeRuns(double inSds) {
      return new Law(alike, runInSds, inSds, warmUpStops, warmUpFirings, creepStops);
    }

    Law warming(double stops, double firings) {
      return new Law(alike, runInSds, wholeRunInSds, stops, firings, creepStops);
    }

    Law creeping(double stopsAFiring) {
      return new Law(alike, runInSds, wholeRunInSds, warmUpStops, warmUpFirings, stopsAFiring);
    }
  }

  private final SplittableRandom random;

  DrawnRuns(long seed) {
    random = new SplittableRandom(seed);
  }

  /** A number of a normal distribution with mean 0 and standard deviation 1. */
  double normal() {
    return random.nextGaussian();
  }

  /** A number evenly spread with mean 0 and standard deviation 1. */
  double even() {
    return Math.sqrt(3) * (2 * random.nextDouble() - 1);
  }

  /**
   * Errors of a run, speed by speed in the order of the dial, in stops.
   *
   * @param sd standard deviation of one firing at each speed
   * @param firings of each speed
   */
  double[][] errors(Law law, double[] sd, int firings) {
    double[][] errors = new double[sd.length][firings];
    double whole = law.wholeRunInSds * normal();
    int fired = 0;
    for (int speed = 0; speed < sd.length; speed++) {
      double off = whole + law.runInSds * normal();
      double last = 0;
      for (int i = 0; i < firings; i++) {
        double fresh = normal();
        last = i == 0 ? fresh : law.alike * last + Math.sqrt(1 - law.alike * law.alike) * fresh;
        errors[speed][i] =
            sd[speed] * (last + off)
                + law.warmUpStops * Math.exp(-fired / law.warmUpFirings)
                + law.creepStops * i;
        fired++;
      }
    }
    return errors;
  }

  /** A run of such errors, as a rig without errors of its own would have measured it. */
  static RunSummary run(Phase phase, double[][] errors) {
    List<SpeedSummary> speeds = new ArrayList<>();
    for (int i = 0; i < errors.length; i++) {
      speeds.add(speed(phase, DIAL.get(i), errors[i], OptionalDouble.empty(), Map.of()));
    }
    return new RunSummary(phase, speeds);
  }

  /** One speed of such a run. */
  static SpeedSummary speed(
      Phase phase,
      MarkedSpeed speed,
      double[] errors,
      OptionalDouble afterRest,
      Map<Outcome, Integer> others) {
    Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
    outcomes.putAll(others);
    int timed = errors.length + (afterRest.isPresent() ? 1 : 0);
    if (timed > 0) {
      outcomes.put(Outcome.TIMED, timed);
    }
    return new SpeedSummary(
        speed,
        Reference.EXACT,
        phase,
        new ReleaseCounts(outcomes.values().stream().mapToInt(Integer::intValue).sum(), outcomes),
        Sample.of(errors),
        afterRest,
        Tolerance.THIRD,
        HowMeasured.BY_A_MODEL);
  }
}
