package org.halflight.desk.view;

import java.util.Optional;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.TwoSpeeds;
import org.halflight.verdict.TwoAtOnce;

/** What is heard while a speed is adjusted, or two at once: closer, further, enough. */
final class AdjustingCue {
  private AdjustingCue() {}

  /** The sound of the newest firing; empty where it tells no more than that it counts. */
  static Optional<Cue> of(Session session, FiringResult newest) {
    Optional<RunSetup> setup =
        session.setup().filter(its -> its.phase() == Phase.ADJUSTING && newest.isGood());
    if (setup.isEmpty() || newest.shown().isEmpty() || newest.run() != session.run()) {
      return Optional.empty();
    }
    Optional<TwoSpeeds> two = session.two().filter(its -> its.has(newest.shown().get()));
    if (two.isPresent()) {
      TwoAtOnce both =
          TwoAtOnce.of(
              two.get(), setup.get(), session.run(), session.results(), session.adjusted());
      return both.at(newest.shown().get()).flatMap(side -> of(side, both.isEnough()));
    }
    TwoAtOnce.Side alone =
        TwoAtOnce.alone(
            newest.shown().get(),
            setup.get(),
            session.run(),
            session.results(),
            session.adjusted());
    return of(alone, alone.isWithin());
  }

  private static Optional<Cue> of(TwoAtOnce.Side side, boolean enough) {
    if (enough) {
      return Optional.of(Cue.ENOUGH);
    }
    return switch (side.change()) {
      case CLOSER -> Optional.of(Cue.CLOSER);
      case FURTHER -> Optional.of(Cue.FURTHER);
      case ACROSS, NO_CHANGE, NOT_YET -> Optional.empty();
    };
  }
}
