package org.halflight.verdict;

import org.halflight.stored.StoredWords;

/** Where a speed lies against its tolerance, as far as anybody can tell. */
public enum Verdict {
  /** Within both limits by more than the guard band. */
  WITHIN,
  /** Beyond the slow limit by more than the guard band. */
  SLOW,
  /** Beyond the fast limit by more than the guard band. */
  FAST,
  /**
   * The firings that were timed lie within, but not every release opened once and closed: it hung,
   * opened twice or did not open.
   */
  SOME_FAILED,
  /**
   * Within the guard band of a limit, or with too many firings on its wrong side: more firings or a
   * calibrated rig may tell.
   */
  TOO_CLOSE_TO_CALL,
  /**
   * A number of firings was fixed beforehand and not all of them were timed: nothing is claimed.
   */
  FEWER_THAN_PLANNED,
  /** Fewer than two timed firings: nothing is claimed. */
  TOO_FEW,
  /** Edges and light curve of a firing do not see the same light: nothing is claimed. */
  CHECK_RIG,
  /**
   * The light of a firing stayed below full: until full light is measured again, nothing is
   * claimed.
   */
  FULL_LIGHT_AGAIN;

  /** As files store them. */
  public static final StoredWords<Verdict> WORDS =
      StoredWords.of(
          Verdict.class,
          verdict ->
              switch (verdict) {
                case WITHIN -> "within";
                case SLOW -> "slow";
                case FAST -> "fast";
                case SOME_FAILED -> "some-failed";
                case TOO_CLOSE_TO_CALL -> "too-close-to-call";
                case FEWER_THAN_PLANNED -> "fewer-than-planned";
                case TOO_FEW -> "too-few";
                case CHECK_RIG -> "check-rig";
                case FULL_LIGHT_AGAIN -> "full-light-again";
              });
}
