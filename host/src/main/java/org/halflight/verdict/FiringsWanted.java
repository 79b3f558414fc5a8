package org.halflight.verdict;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.session.AlikeFirings;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringKey;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.speeds.MarkedSpeed;

/**
 * How many firings a decision on a speed takes where they scatter as its first three do and their
 * mean stays. A forecast, no verdict: nothing is decided by it.
 *
 * @param soFar firings that it is worked out from
 * @param inAll how many decide; empty where no number up to {@link Decision#MOST} does
 * @param planned how many were fixed beforehand; empty where the speed is fired until it is decided
 */
public record FiringsWanted(int soFar, OptionalInt inAll, OptionalInt planned) {
  /** From so many firings on their scatter says something. */
  public static final int LEAST = 3;

  /**
   * What there is to say behind a firing: only where it made its speed have {@link #LEAST}.
   *
   * @param newest the firing
   * @param all firings of its session
   * @param runs of its session, in order
   */
  public static Optional<FiringsWanted> after(
      FiringResult newest, List<FiringResult> all, List<RunSetup> runs) {
    Optional<MarkedSpeed> speed = newest.setting().flatMap(DialSetting::speed);
    if (speed.isEmpty() || newest.run() < 1 || newest.run() > runs.size()) {
      return Optional.empty();
    }
    RunSetup setup = runs.get(newest.run() - 1);
    List<FiringResult> own =
        all.stream()
            .filter(f -> f.run() == newest.run() && f.shown().equals(speed))
            .filter(f -> f.phase().isPresent())
            .toList();
    Set<FiringKey> good = AlikeFirings.inMeans(own);
    boolean third =
        good.size() == LEAST && good.contains(newest.key()) && setup.phase() != Phase.ADJUSTING;
    return third ? of(SpeedSummary.underWay(own, setup)) : Optional.empty();
  }

  private static Optional<FiringsWanted> of(SpeedSummary summary) {
    return summary
        .decisionSoFar()
        .map(
            decision ->
                new FiringsWanted(
                    LEAST,
                    decision.furtherFirings().isPresent()
                        ? OptionalInt.of(LEAST + decision.furtherFirings().getAsInt())
                        : OptionalInt.empty(),
                    summary.decisionBasis().planned()));
  }
}
