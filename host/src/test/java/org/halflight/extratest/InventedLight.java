package org.halflight.extratest;

import java.util.List;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.session.CameraCustoms;
import org.halflight.session.LightReading;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;

/** An invented shutter before a session: openings with straight ramps, of exactly known light. */
final class InventedLight {
  static final double DARK = 8;
  static final double FULL = 820;
  static final TickRate RATE = TickRate.BOARD_16_MHZ;

  final Session session = new Session();
  private double now = 1;

  InventedLight() {
    session.handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    double span = FULL - DARK;
    session.handle(
        new SessionInput.LightSet(
            new LightLevels(
                DARK,
                FULL,
                DARK + span * LevelPair.GAUSS.low(),
                DARK + span * LevelPair.GAUSS.high())));
  }

  void begin(Phase phase, CameraCustoms customs, MarkedSpeed... speeds) {
    session.handle(
        new SessionInput.RunBegins(
            new RunSetup("invented camera", phase, "leaf", List.of(speeds), Reference.EXACT, 3)
                .withCustoms(customs)));
  }

  /**
   * An opening with straight ramps: its effective time is exactly this, by the two-level rule too.
   */
  void open(double effectiveSeconds, double rampSeconds) {
    double low = LevelPair.GAUSS.low() * rampSeconds;
    double high = LevelPair.GAUSS.high() * rampSeconds;
    double end = now + effectiveSeconds + rampSeconds;
    edge(Channel.CENTRE_LOW, true, now + low);
    edge(Channel.CENTRE_HIGH, true, now + high);
    edge(Channel.CENTRE_HIGH, false, end - high);
    edge(Channel.CENTRE_LOW, false, end - low);
    now = end;
  }

  void dark(double seconds) {
    now += seconds;
  }

  void quiet() {
    now += 1;
    session.handle(new SessionInput.BeatAt(RATE.ticks(now), 0));
  }

  void read(LightReading.What what, String at, boolean opening, double counts) {
    read(what, at, opening, counts, 0.01);
  }

  void read(LightReading.What what, String at, boolean opening, double counts, double uncertainty) {
    now += 2;
    session.handle(
        new SessionInput.LightRead(
            LightReading.of(what, at, opening, counts, uncertainty, 1000, RATE.ticks(now))));
  }

  List<ExtraTest> tried() {
    return ExtraTests.of(session.results(), session.readings(), session.runs());
  }

  private void edge(Channel channel, boolean high, double seconds) {
    session.handle(new SessionInput.EdgeAt(new Edge(channel, high, RATE.ticks(seconds))));
  }
}
