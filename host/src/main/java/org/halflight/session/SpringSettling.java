package org.halflight.session;

import java.util.List;

/**
 * After a spring was given other tension, the first firings settle it and count for nothing. Common
 * practice, no source.
 */
public final class SpringSettling {
  /** So many settle it. */
  public static final int FIRINGS = 2;

  private SpringSettling() {}

  /** Whether an adjustment is followed by firings that do not count. */
  public static boolean isWantedBy(AdjustedAt mark) {
    return AdjusterTurn.find(mark.words())
        .filter(turn -> !turn.isAsFound() && turn.adjuster().isTension())
        .isPresent();
  }

  /**
   * The number of the last firing that does not count after an adjustment.
   *
   * @param results all firings of the session, in order
   */
  public static int lastUncounted(AdjustedAt mark, List<FiringResult> results) {
    return isWantedBy(mark)
        ? results.stream()
            .filter(firing -> isSince(mark, firing))
            .limit(FIRINGS)
            .mapToInt(FiringResult::number)
            .max()
            .orElse(mark.afterFiring())
        : mark.afterFiring();
  }

  /**
   * The same after all adjustments of a run; 0 where there were none.
   *
   * @param marks all adjustments of the session
   * @param results all firings of the session, in order
   */
  public static int lastUncounted(int run, List<AdjustedAt> marks, List<FiringResult> results) {
    return marks.stream()
        .filter(mark -> mark.run() == run)
        .mapToInt(mark -> lastUncounted(mark, results))
        .max()
        .orElse(0);
  }

  /** How many firings are still to settle a spring in a run. */
  public static int toCome(int run, List<AdjustedAt> marks, List<FiringResult> results) {
    return marks.stream()
        .filter(mark -> mark.run() == run && isWantedBy(mark))
        .mapToInt(
            mark ->
                FIRINGS
                    - (int)
                        results.stream()
                            .filter(firing -> isSince(mark, firing))
                            .limit(FIRINGS)
                            .count())
        .max()
        .orElse(0);
  }

  private static boolean isSince(AdjustedAt mark, FiringResult firing) {
    return firing.run() == mark.run()
        && firing.number() > mark.afterFiring()
        && firing.outcome().isOfTheShutter();
  }
}
