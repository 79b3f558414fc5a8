package org.halflight.validation;

import java.util.List;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.ChangeExtent;
import org.halflight.verdict.Pattern;
import org.halflight.verdict.Patterns;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunSummary;

/**
 * How often a comparison finds what cleaning a dirty slow-speed train did.
 *
 * @param pairs of runs, before and after
 * @param slowShifts slow speeds whose shift was found, of all slow speeds
 * @param slowSpeeds all slow speeds of all pairs
 * @param slowReach pairs said to have changed at the slow speeds and nowhere else
 * @param slowScatter pairs in which the slow speeds were said to run more evenly
 * @param fastCalledChanged pairs in which anything was said to have changed at the fast speeds
 * @param signature runs before in which the slow speeds alone were off
 * @param quietAfter runs after in which nothing stood out
 */
record CleanedTrain(
    int pairs,
    int slowShifts,
    int slowSpeeds,
    int slowReach,
    int slowScatter,
    int fastCalledChanged,
    int signature,
    int quietAfter) {
  static CleanedTrain of(List<MarkedSpeed> dial, long seed, int firings, int pairs) {
    ModelRuns dirty = new ModelRuns(InventedShutters.dirtySlowTrain(dial, seed));
    ModelRuns cleaned = new ModelRuns(InventedShutters.cleanedSlowTrain(dial, seed + 1));
    int slowShifts = 0;
    int slowSpeeds = 0;
    int slowReach = 0;
    int slowScatter = 0;
    int fast = 0;
    int signature = 0;
    int quiet = 0;
    for (int pair = 0; pair < pairs; pair++) {
      RunSummary before = dirty.next(Phase.AS_FOUND, firings);
      RunSummary after = cleaned.next(Phase.AS_LEFT, firings);
      RunComparison runs = RunComparison.of(before, after);
      slowSpeeds += runs.part(true).size();
      slowShifts += (int) runs.part(true).stream().filter(s -> s.finding().isChange()).count();
      slowReach += runs.reach() == ChangeExtent.SLOW_SPEEDS ? 1 : 0;
      slowScatter += runs.slowScatter().found() ? 1 : 0;
      boolean anyFast =
          runs.part(false).stream().anyMatch(s -> s.finding().isChange() || s.scatter().found());
      fast += anyFast || runs.fastScatter().found() || runs.dialMoved() ? 1 : 0;
      signature += Patterns.of(before).kind() == Pattern.Kind.SLOW_SPEEDS ? 1 : 0;
      quiet += Patterns.of(after).kind() == Pattern.Kind.NOTHING_STANDS_OUT ? 1 : 0;
    }
    return new CleanedTrain(
        pairs, slowShifts, slowSpeeds, slowReach, slowScatter, fast, signature, quiet);
  }
}
