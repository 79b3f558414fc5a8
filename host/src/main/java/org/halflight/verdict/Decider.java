package org.halflight.verdict;

import java.util.OptionalInt;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.halflight.speeds.Tolerance;

/** What a verdict is about, as far as the firings tell it: decides where that lies. */
sealed interface Decider permits UsualExposure, OneExposure {
  /** The decision with its guard band and the firings that it may still take. */
  Decision decide(Tolerance tolerance, DecisionRule rule);

  /** The decision alone. */
  Verdict verdict(Tolerance tolerance, DecisionRule rule);

  /** What the mean and scatter say by themselves, without counts of firings. */
  default Verdict ofTheMean(Tolerance tolerance, DecisionRule rule) {
    return verdict(tolerance, rule);
  }

  /** How far above the mean the truth may lie, in stops. */
  double guardAboveStops(DecisionRule rule);

  /** How far below the mean it may lie, in stops. */
  double guardBelowStops(DecisionRule rule);

  /** The wider of the two. */
  default double guardStops(DecisionRule rule) {
    return Math.max(guardAboveStops(rule), guardBelowStops(rule));
  }

  /**
   * How many more firings it would take.
   *
   * @param now the verdict on those that there are
   * @param decides whether so many firings in all would decide
   */
  static OptionalInt further(Verdict now, int firings, IntPredicate decides) {
    return now == Verdict.TOO_CLOSE_TO_CALL
        ? IntStream.rangeClosed(firings + 1, Decision.MOST)
            .filter(decides)
            .map(then -> then - firings)
            .findFirst()
        : OptionalInt.of(0);
  }
}
