package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.stats.Sample;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** What a session makes of firings that a small rig saw, at levels in turn. */
class SmallRigTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");

  /** Straight ramps of 1 ms: the width at a level is the effective time plus (1 - 2 q) ms. */
  private static final double RAMP_SECONDS = 1e-3;

  private final Session session = new Session();
  private double now = 1;

  SmallRigTest() {
    session.handle(new SessionInput.RigIs("R-0009", 1, new BoardTraits(RATE, true, false), ""));
    session.handle(
        new SessionInput.LightSet(
            new LightLevels(
                20, 820, 20 + 800 * LevelPair.GAUSS.low(), 20 + 800 * LevelPair.GAUSS.high())));
    session.handle(
        new SessionInput.RunBegins(
            InventedBench.setup(Phase.ADJUSTING, 9, List.of(S500), List.of(), CameraCustoms.NONE)));
  }

  @Test
  void aFiringHasATimeOnceTheOthersWereSeenAtBothLevels() {
    fire(Level.LOW, 2e-3);
    fire(Level.HIGH, 2e-3);
    assertThat(times()).isEmpty();
    fire(Level.LOW, 2e-3);
    assertThat(times()).hasSize(2);
    fire(Level.HIGH, 2e-3);
    assertThat(times()).hasSize(4).allSatisfy(t -> assertThat(t).isCloseTo(2e-3, within(2e-7)));
  }

  @Test
  void theMeanIsThatOfTheTwoLevelsAndTheScatterIsNotUnderstated() {
    // Mean 2 ms at either level, 2 % off it to either side there.
    double[] seconds = {1.96e-3, 1.96e-3, 2.04e-3, 2.04e-3};
    List<Double> truth = new ArrayList<>();
    for (int i = 0; i < seconds.length; i++) {
      fire(i % 2 == 0 ? Level.LOW : Level.HIGH, seconds[i]);
      truth.add(seconds[i]);
    }
    Sample figures = Sample.of(times());
    assertThat(times().stream().mapToDouble(t -> t).average().orElseThrow())
        .isCloseTo(2e-3, within(2e-7));
    double shown = figures.sd().known().orElseThrow();
    double real = Sample.of(truth).sd().known().orElseThrow();
    assertThat(shown).isGreaterThanOrEqualTo(real).isLessThan(1.6 * real);
  }

  @Test
  void aRejectedFiringCompletesNoOther() {
    fire(Level.LOW, 2e-3);
    fire(Level.HIGH, 2e-3);
    fire(Level.LOW, 2e-3);
    fire(Level.HIGH, 5e-3);
    assertThat(times().get(0)).isGreaterThan(2.1e-3);
    session.handle(new SessionInput.LastRejected("the dial stood elsewhere"));
    assertThat(times().get(0)).isCloseTo(2e-3, within(2e-7));
  }

  @Test
  void aFiringWhileTheLevelWasOnItsWayIsKeptWithoutATimeAndCompletesNoOther() {
    fire(Level.LOW, 2e-3);
    fire(Level.HIGH, 2e-3);
    session.handle(new SessionInput.LevelStands(Optional.empty()));
    light(2.3e-3);
    fire(Level.LOW, 2e-3);
    fire(Level.HIGH, 2e-3);
    assertThat(session.results()).hasSize(5);
    assertThat(session.results().get(2).outcome()).isEqualTo(Outcome.UNUSABLE);
    assertThat(times()).hasSize(4).allSatisfy(t -> assertThat(t).isCloseTo(2e-3, within(2e-7)));
  }

  private List<Double> times() {
    return session.results().stream()
        .filter(FiringResult::isGood)
        .map(r -> r.effectiveSeconds().orElseThrow())
        .toList();
  }

  private void fire(Level level, double effectiveSeconds) {
    session.handle(new SessionInput.LevelStands(Optional.of(level)));
    double q = level == Level.LOW ? LevelPair.GAUSS.low() : LevelPair.GAUSS.high();
    light(effectiveSeconds + (1 - 2 * q) * RAMP_SECONDS);
  }

  private void light(double widthSeconds) {
    edge(true, now);
    edge(false, now + widthSeconds);
    for (int i = 0; i < 4; i++) {
      now += 0.25;
      session.handle(new SessionInput.BeatAt(RATE.ticks(now), 0));
    }
  }

  private void edge(boolean high, double seconds) {
    session.handle(
        new SessionInput.EdgeAt(new Edge(Channel.CENTRE_LOW, high, RATE.ticks(seconds))));
  }
}
