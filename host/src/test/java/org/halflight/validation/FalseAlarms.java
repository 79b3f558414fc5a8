package org.halflight.validation;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.verdict.RunComparison;

/**
 * How often a comparison of two runs of the same unchanged shutter calls anything changed.
 *
 * @param pairs of runs
 * @param anything pairs in which any mean, the whole dial or any scatter was called changed
 * @param means pairs in which any mean or the whole dial was
 * @param scatters pairs in which any scatter was
 * @param same speeds called 'less than a tenth of a stop', of all speeds of all pairs
 * @param speeds all speeds of all pairs
 */
record FalseAlarms(int pairs, int anything, int means, int scatters, int same, int speeds) {
  static FalseAlarms of(LeafShutter shutter, int firings, int pairs) {
    ModelRuns runs = new ModelRuns(shutter);
    int anything = 0;
    int means = 0;
    int scatters = 0;
    int same = 0;
    int speeds = 0;
    for (int pair = 0; pair < pairs; pair++) {
      RunComparison comparison =
          RunComparison.of(runs.next(Phase.AS_FOUND, firings), runs.next(Phase.AS_LEFT, firings));
      boolean mean = comparison.dialMoved() || !comparison.changed().isEmpty();
      boolean scatter =
          comparison.slowScatter().found()
              || comparison.fastScatter().found()
              || comparison.speeds().stream().anyMatch(speed -> speed.scatter().found());
      anything += comparison.anythingChanged() ? 1 : 0;
      means += mean ? 1 : 0;
      scatters += scatter ? 1 : 0;
      for (var speed : comparison.speeds()) {
        speeds++;
        same += speed.finding() == org.halflight.verdict.ShiftFinding.LESS_THAN_A_TENTH ? 1 : 0;
      }
    }
    return new FalseAlarms(pairs, anything, means, scatters, same, speeds);
  }

  /** The upper end of the exact 95 % interval of a rate (Clopper and Pearson 1934). */
  static double highest(int found, int of) {
    return found == of
        ? 1
        : new BetaDistribution(null, found + 1, of - found).inverseCumulativeProbability(0.975);
  }
}
