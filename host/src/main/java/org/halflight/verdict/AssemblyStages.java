package org.halflight.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.session.Assembly;

/**
 * The stages of an assembly, each compared with the one before.
 *
 * <p>Three firings tell little of the scatter, so the slow speed's scatter is pooled over all
 * stages, with {@link StageScatter#USUAL_SLOW_DEGREES} degrees of freedom of the usual one. A stage
 * as a whole may lie off a little more than its firings scatter: {@link StageScatter#ALLOWANCE}.
 * The top speed is fired once, so its scatter is taken from how its firings differ from stage to
 * stage, by the median, and never less than {@link StageScatter#USUAL_TOP_SD}. A change is called
 * one where it is beyond its interval and no less than the least that matters. The intervals hold
 * for all comparisons of a repair together (Bonferroni), so that in an unchanged shutter any change
 * is called in at most 1 repair of 20: {@link #SLOW_ALPHA} and {@link #TOP_ALPHA}; the rest is left
 * to firings that fail.
 *
 * @param stages in order
 * @param changes one less than there are stages
 */
public record AssemblyStages(List<Stage> stages, List<StageChange> changes) {
  /** Chance of calling any change of the slow speed where none is. */
  public static final double SLOW_ALPHA = 0.03;

  /** The same of the top speed. */
  public static final double TOP_ALPHA = 0.01;

  /** So many comparisons are counted on from the first: those of a repair of six stages. */
  public static final int LEAST_COMPARISONS = 5;

  /** The least change of the slow speed that matters, in stops. Our choice. */
  public static final double LEAST_SLOW_STOPS = 0.1;

  /** The same of the top speed. */
  public static final double LEAST_TOP_STOPS = 0.2;

  public AssemblyStages {
    stages = List.copyOf(stages);
    changes = List.copyOf(changes);
  }

  /** Half of the 95 % interval of the slow speed's mean in a stage that has one, in stops. */
  public double slowPlusMinus(Stage stage) {
    return StageScatter.slow(stages).plusMinus(stage.slow().errors().n());
  }

  /** The same of the top speed. */
  public double topPlusMinus(Stage stage) {
    return StageScatter.top(stages, StageScatter.slow(stages)).plusMinus(stage.top().errors().n());
  }

  /** What a stage shows against the one before, counted from 1; empty for the first. */
  public Optional<StageChange> change(int stage) {
    return stage > 1 ? Optional.of(changes.get(stage - 2)) : Optional.empty();
  }

  /** Compares each stage with the one before. The speeds of all of them are the same. */
  public static AssemblyStages of(List<Stage> stages) {
    StageScatter slow = StageScatter.slow(stages);
    StageScatter top = StageScatter.top(stages, slow);
    int comparisons = Math.max(LEAST_COMPARISONS, stages.size() - 1);
    List<StageChange> changes = new ArrayList<>();
    boolean found = false;
    for (int i = 1; i < stages.size(); i++) {
      Stage before = stages.get(i - 1);
      Stage after = stages.get(i);
      List<Assembly.Part> changed = before.assembly().unlike(after.assembly());
      // With other cells the old full light says nothing.
      boolean known = after.lightSet() || changed.stream().noneMatch(Assembly.Part::isCell);
      changes.add(
          new StageChange(
              before,
              after,
              changed,
              slow.compare(
                  before.slow(), after.slow(), known, SLOW_ALPHA / comparisons, LEAST_SLOW_STOPS),
              top.compare(
                  before.top(), after.top(), known, TOP_ALPHA / comparisons, LEAST_TOP_STOPS),
              found));
      found = changes.get(i - 1).isKnownAfter();
    }
    return new AssemblyStages(stages, changes);
  }
}
