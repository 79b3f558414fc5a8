package org.halflight.session;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.time.TickRate;

/**
 * An invented shutter before a session: opens and closes with straight ramps, so that the effective
 * time is exactly what is asked for. Keeps all inputs and news.
 */
final class InventedBench {
  static final TickRate RATE = TickRate.BOARD_16_MHZ;
  static final double DARK = 20;
  static final double FULL = 820;
  static final MarkedSpeed S8 = MarkedSpeed.parse("1/8");
  static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");
  static final MarkedSpeed S125 = MarkedSpeed.parse("1/125");
  static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");

  final Session session = new Session();
  final List<SessionInput> inputs = new ArrayList<>();
  final List<SessionEvent> news = new ArrayList<>();
  double now = 1;
  private int levels;

  InventedBench() {
    handle(new SessionInput.RigIs("R-0001", 7, BoardTraits.USUAL, ""));
    setLight();
  }

  void setLight() {
    double span = FULL - DARK;
    handle(
        new SessionInput.LightSet(
            new LightLevels(
                DARK,
                FULL,
                DARK + span * LevelPair.GAUSS.low(),
                DARK + span * LevelPair.GAUSS.high())));
  }

  void handle(SessionInput input) {
    inputs.add(input);
    news.addAll(session.handle(input));
  }

  void begin(Phase phase, int firings, MarkedSpeed... speeds) {
    begin(setup(phase, firings, List.of(speeds), List.of(), CameraCustoms.NONE));
  }

  void begin(RunSetup setup) {
    handle(new SessionInput.RunBegins(setup));
  }

  static RunSetup setup(
      Phase phase,
      int firings,
      List<MarkedSpeed> speeds,
      List<UntimedTest> checks,
      CameraCustoms customs) {
    return new RunSetup(
            "invented camera",
            phase,
            "leaf",
            speeds,
            Reference.EXACT,
            firings,
            checks.toArray(UntimedTest[]::new))
        .withCustoms(customs);
  }

  static RunSetup custom(Phase phase, int firings, MarkedSpeed... speeds) {
    return new RunSetup(
        "invented camera", phase, Dial.CUSTOM, List.of(speeds), Reference.EXACT, firings);
  }

  /** The effective time that a speed should have, off by some stops. */
  static double seconds(MarkedSpeed speed, double stops) {
    return speed.exactSeconds() * Math.pow(2, stops);
  }

  void fire(MarkedSpeed like, double stops) {
    fire(seconds(like, stops));
  }

  void fire(double effectiveSeconds) {
    light(effectiveSeconds, effectiveSeconds / 8);
    quiet();
  }

  /** Light from now on, without the quiet time behind it; the low level is crossed just after. */
  void light(double effectiveSeconds, double rampSeconds) {
    double start = now;
    double low = LevelPair.GAUSS.low() * rampSeconds;
    double high = LevelPair.GAUSS.high() * rampSeconds;
    double end = start + effectiveSeconds + rampSeconds;
    edge(Channel.CENTRE_LOW, true, start + low);
    edge(Channel.CENTRE_HIGH, true, start + high);
    edge(Channel.CENTRE_HIGH, false, end - high);
    edge(Channel.CENTRE_LOW, false, end - low);
    now = end;
  }

  /** Light that only the low level sees. */
  void dimLight(double seconds) {
    edge(Channel.CENTRE_LOW, true, now);
    edge(Channel.CENTRE_LOW, false, now + seconds);
    now += seconds;
  }

  void press() {
    edge(Channel.RELEASE, true, now);
  }

  void letGo() {
    edge(Channel.RELEASE, false, now);
  }

  void releaseWithoutLight() {
    press();
    now += 0.1;
    letGo();
    quiet();
  }

  /** Rig time passes with a beat each quarter second, in the dark. */
  void pass(double seconds) {
    double end = now + seconds;
    while (now + 0.25 < end) {
      now += 0.25;
      beat();
    }
    now = end;
    beat();
  }

  void quiet() {
    pass(0.6);
    now += 0.1;
  }

  /** A beat with the levels that the edges so far have left. */
  void beat() {
    handle(new SessionInput.BeatAt(RATE.ticks(now), levels));
  }

  void beat(double lightCounts) {
    handle(
        new SessionInput.BeatAt(
            RATE.ticks(now), levels, OptionalInt.of((int) Math.round(16 * lightCounts))));
  }

  /** A firing of a quarter second with a beat in the middle of its plateau. */
  void fireWithPlateau(double lightCounts) {
    edge(Channel.CENTRE_LOW, true, now);
    edge(Channel.CENTRE_HIGH, true, now + 0.001);
    now += 0.06;
    beat(lightCounts);
    edge(Channel.CENTRE_HIGH, false, now + 0.064);
    edge(Channel.CENTRE_LOW, false, now + 0.065);
    now += 0.065;
    quiet();
  }

  void edge(Channel channel, boolean high, double seconds) {
    int bit = 1 << channel.code();
    levels = high ? levels | bit : levels & ~bit;
    handle(new SessionInput.EdgeAt(new Edge(channel, high, RATE.ticks(seconds))));
  }

  FiringResult result(int number) {
    return session.results().get(number - 1);
  }

  List<Outcome> outcomes() {
    return session.results().stream().map(FiringResult::outcome).toList();
  }

  <T extends SessionEvent> List<T> news(Class<T> kind) {
    return news.stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
