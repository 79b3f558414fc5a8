package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;

/** The parts that a session hands its inputs to, put together by hand. */
final class PartsOfASession {
  static final LightLevels LIGHT =
      new LightLevels(20, 820, 20 + 800 * LevelPair.GAUSS.low(), 20 + 800 * LevelPair.GAUSS.high());

  final FiringLog log = new FiringLog();
  final DialQuestions questions = new DialQuestions(log);
  final RunProgress progress =
      new RunProgress(log, new PressBook(log), questions, (setup, firings) -> true);
  final RigOnBench rig = new RigOnBench();
  final LightState light = new LightState(log);
  final FiringMeter meter = new FiringMeter(log, progress, rig, light, RunSetup::exposureMethod);
  final Corrections corrections = new Corrections(log, progress, questions, meter.oneLevel());
  final List<SessionEvent> events = new ArrayList<>();

  PartsOfASession() {
    rig.onRigIdentified(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""), events);
  }

  /** Straight ramps of 1 ms from a time on, so that the effective time is exact. */
  static Firing firing(double fromSeconds, double effectiveSeconds) {
    double low = LevelPair.GAUSS.low() * 1e-3;
    double high = LevelPair.GAUSS.high() * 1e-3;
    double end = fromSeconds + effectiveSeconds + 1e-3;
    return new Firing(
        List.of(
            edge(Channel.CENTRE_LOW, true, fromSeconds + low),
            edge(Channel.CENTRE_HIGH, true, fromSeconds + high),
            edge(Channel.CENTRE_HIGH, false, end - high),
            edge(Channel.CENTRE_LOW, false, end - low)),
        List.of());
  }

  static Edge edge(Channel channel, boolean high, double seconds) {
    return new Edge(channel, high, BoardTraits.USUAL.rate().ticks(seconds));
  }

  /** A timed firing at what is shown, in the log. */
  FiringResult fire(double atSeconds, double effectiveSeconds) {
    Firing firing = firing(atSeconds, effectiveSeconds);
    FiringResult result =
        meter.result(
            log.size() + 1,
            rig.keyOf(firing),
            firing,
            progress.place(progress.shown(), false),
            Outcome.TIMED,
            meter.exposure(firing),
            meter.seenNow(),
            FiringNotes.NONE);
    log.add(result);
    return result;
  }

  <T extends SessionEvent> List<T> events(Class<T> kind) {
    return events.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
