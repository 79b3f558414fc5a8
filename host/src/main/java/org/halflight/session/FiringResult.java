package org.halflight.session;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.exposure.LeafExposure;
import org.halflight.exposure.LevelPair;
import org.halflight.signal.Firing;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;

/**
 * One release and what it came to. The raw edges stay with it, so that it can be worked out again.
 *
 * @param number counts the releases of the session from 1
 * @param key its identity
 * @param firing the raw edges
 * @param rate ticks a second of the board
 * @param shown the speed shown when it was fired; empty before a run was begun
 * @param reference how the marking is read
 * @param phase of the run; empty before a run was begun
 * @param outcome what became of it
 * @param exposure the figures
 * @param levels the levels that the figures were worked out with; empty where full-open light was
 *     not known, and the thresholds were taken to stand where they should
 * @param afterRest whether it was the first release of an as-found run
 * @param rejection the reason the person gave for not counting it; empty when it counts
 */
public record FiringResult(
    int number,
    FiringKey key,
    Firing firing,
    TickRate rate,
    Optional<MarkedSpeed> shown,
    Reference reference,
    Optional<Phase> phase,
    Outcome outcome,
    LeafExposure exposure,
    Optional<LevelPair> levels,
    boolean afterRest,
    Optional<String> rejection) {
  public FiringResult {
    Objects.requireNonNull(key);
    Objects.requireNonNull(firing);
    Objects.requireNonNull(outcome);
    Objects.requireNonNull(exposure);
  }

  /**
   * Whether its time goes into the statistics of its speed. The first firing after rest never does:
   * it is shown by itself and not averaged away.
   */
  public boolean isGood() {
    return outcome == Outcome.TIMED && rejection.isEmpty() && !afterRest;
  }

  /** Whether it is one of the firings asked for, with a time or only with bounds. */
  public boolean answersTheQuestion() {
    return isGood() || (outcome == Outcome.NEVER_FULLY_OPEN && rejection.isEmpty() && !afterRest);
  }

  /** The effective time in seconds, where it was timed. */
  public OptionalDouble effectiveSeconds() {
    return exposure instanceof LeafExposure.Timed timed && outcome == Outcome.TIMED
        ? OptionalDouble.of(timed.effectiveSeconds())
        : OptionalDouble.empty();
  }

  /** The time that the shown speed should have had, in seconds. */
  public OptionalDouble referenceSeconds() {
    return shown.isPresent()
        ? OptionalDouble.of(shown.get().seconds(reference))
        : OptionalDouble.empty();
  }

  /** The error in stops, above zero is slow, where it was timed at a shown speed. */
  public OptionalDouble errorStops() {
    OptionalDouble effective = effectiveSeconds();
    OptionalDouble wanted = referenceSeconds();
    return effective.isPresent() && wanted.isPresent()
        ? OptionalDouble.of(Stops.between(effective.getAsDouble(), wanted.getAsDouble()))
        : OptionalDouble.empty();
  }

  /** The same firing, not counted for a reason. */
  public FiringResult rejected(String reason) {
    return new FiringResult(
        number,
        key,
        firing,
        rate,
        shown,
        reference,
        phase,
        outcome,
        exposure,
        levels,
        afterRest,
        Optional.of(reason));
  }
}
