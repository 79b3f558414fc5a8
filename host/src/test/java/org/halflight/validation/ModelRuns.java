package org.halflight.validation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.FiringTurn;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Stops;
import org.halflight.speeds.Tolerance;
import org.halflight.stats.Sample;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;

/**
 * Runs of a model shutter without a rig between: each error is the model's own effective time. What
 * the rig and the two-level rule add is checked elsewhere; here only the judgements are.
 */
public final class ModelRuns {
  private final LeafShutter shutter;
  private long fired;

  public ModelRuns(LeafShutter shutter) {
    this.shutter = shutter;
  }

  /** The next run after a rest: the whole dial, slow to fast, with so many timed firings each. */
  public RunSummary next(Phase phase, int firings) {
    List<SpeedSummary> speeds = new ArrayList<>();
    int sinceRest = 0;
    for (MarkedSpeed speed : shutter.dial()) {
      List<Double> errors = new ArrayList<>();
      Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
      OptionalDouble afterRest = OptionalDouble.empty();
      int atThisSpeed = 0;
      while (errors.size() < firings) {
        fired++;
        sinceRest++;
        atThisSpeed++;
        ModelFiring firing = shutter.firing(speed, new FiringTurn(fired, sinceRest, atThisSpeed));
        if (firing instanceof ModelFiring.Timed timed) {
          double error = Stops.between(timed.effectiveSeconds(), speed.exactSeconds());
          outcomes.merge(Outcome.TIMED, 1, Integer::sum);
          if (sinceRest == 1) {
            afterRest = OptionalDouble.of(error);
          } else {
            errors.add(error);
          }
        } else {
          outcomes.merge(
              firing instanceof ModelFiring.StuckOpen ? Outcome.STUCK_OPEN : Outcome.DID_NOT_OPEN,
              1,
              Integer::sum);
        }
      }
      speeds.add(
          new SpeedSummary(
              speed,
              Reference.EXACT,
              phase,
              new ReleaseCounts(atThisSpeed, outcomes),
              Sample.of(errors),
              afterRest,
              Tolerance.THIRD,
              HowMeasured.BY_A_MODEL));
    }
    return new RunSummary(phase, speeds);
  }
}
