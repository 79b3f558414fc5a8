package org.halflight.desk.view;

import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.CurtainStep;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.TwoSpeeds;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainRunFigures;
import org.halflight.verdict.CurtainTrials;
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
    if (session.two().isEmpty() && CurtainBench.isLed(setup.get())) {
      Optional<Cue> ofCurtains = ofCurtains(session, setup.get(), newest);
      if (ofCurtains.isPresent() || CurtainBench.travel(newest.exposure()).isPresent()) {
        return ofCurtains;
      }
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

  /** Settling is no counting; what a turn did is heard once enough was fired. */
  private static Optional<Cue> ofCurtains(Session session, RunSetup setup, FiringResult newest) {
    CurtainTrials all = CurtainTrials.of(session.run(), session.adjusted(), session.results());
    CurtainTrials.Trial last = all.last();
    if (last.settling().stream().anyMatch(each -> each.number() == newest.number())) {
      return Optional.of(Cue.NOT_COUNTED);
    }
    MarkedSpeed speed = newest.shown().orElseThrow();
    Optional<CurtainRunFigures> now = last.figures();
    if (now.isEmpty() || last.good(speed) < CurtainTrials.FIRINGS) {
      return Optional.empty();
    }
    CurtainStep step = session.step().orElse(CurtainStep.CLEAN);
    CurtainWatch watch = CurtainWatch.of(step, setup, speed, now.get());
    OptionalDouble mean = mean(now.get(), speed, watch);
    if (watch.band().isEmpty() || mean.isEmpty()) {
      return Optional.empty();
    }
    if (watch.beyond(mean.getAsDouble()) == 0) {
      return Optional.of(Cue.ENOUGH);
    }
    OptionalDouble before =
        all.trials().subList(0, all.trials().size() - 1).stream()
            .flatMap(trial -> trial.figures().stream())
            .flatMapToDouble(figures -> mean(figures, speed, watch).stream())
            .reduce((earlier, later) -> later);
    return before.isEmpty()
        ? Optional.empty()
        : Optional.of(
            watch.off(mean.getAsDouble()) < watch.off(before.getAsDouble())
                ? Cue.CLOSER
                : Cue.FURTHER);
  }

  private static OptionalDouble mean(
      CurtainRunFigures figures, MarkedSpeed speed, CurtainWatch watch) {
    return figures.at(speed).map(its -> its.mean(watch.figure())).orElse(OptionalDouble.empty());
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
