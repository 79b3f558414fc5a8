package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.exposure.AlternatingLevels.Level;
import org.halflight.exposure.ThresholdCodes;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** A quick look with a rig that sees one level at a time, under light that nobody has set. */
class QuickOnSmallRigTest {
  private static final TickRate RATE = TickRate.BOARD_16_MHZ;
  private static final MarkedSpeed S125 = MarkedSpeed.parse("1/125");
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");
  private static final double DARK = 20;
  private static final double FULL = 820;
  private static final double RAMP_SECONDS = 1e-3;
  private static final int PERIOD_TICKS = 256;

  private final Session session = new Session((setup, firings) -> false);
  private double now = 1;
  private boolean lit;

  QuickOnSmallRigTest() {
    session.handle(new SessionInput.RigIs("R-0009", 1, new BoardTraits(RATE, true, false), ""));
    session.handle(
        new SessionInput.RunBegins(
            InventedBench.setup(
                    Phase.AS_FOUND,
                    3,
                    List.of(S125, S500),
                    List.of(UntimedTest.B),
                    CameraCustoms.NONE)
                .withCriteria(AcceptanceCriteria.USUAL.with(RunOption.QUICK, true))));
  }

  @Test
  void firingIsTimedByItsCurveOrNotKnown() {
    fire(Level.LOW, 0.008, true);
    assertThat(session.shown()).contains(S500);
    fire(Level.HIGH, 0.002, false);
    assertThat(session.untimedTest()).contains(UntimedTest.B);
    assertThat(session.results()).allMatch(firing -> firing.effectiveSeconds().isEmpty());

    hold(3);
    assertThat(session.light().orElseThrow().fullCounts()).isCloseTo(FULL, within(1.0));
    assertThat(session.results().get(0).effectiveSeconds().orElseThrow())
        .isCloseTo(0.008, within(2e-5));
    assertThat(session.results().get(1).effectiveSeconds())
        .as("without a curve it is not known")
        .isEmpty();
    assertThat(session.repeat().map(QuickRepeat::speed)).as("what is known").contains(S125);
  }

  private static double level(Level level) {
    double counts =
        level == Level.LOW
            ? ThresholdCodes.AFTER_START.lowCounts()
            : ThresholdCodes.AFTER_START.highCounts();
    return (counts - DARK) / (FULL - DARK);
  }

  private void fire(Level level, double effectiveSeconds, boolean withCurve) {
    session.handle(new SessionInput.LevelStands(Optional.of(level)));
    double start = now;
    double reach = level(level) * RAMP_SECONDS;
    edge(true, start + reach);
    edge(false, start + effectiveSeconds + RAMP_SECONDS - reach);
    now = start + effectiveSeconds + RAMP_SECONDS;
    if (withCurve) {
      session.handle(new SessionInput.CurveAt(curve(start, effectiveSeconds)));
    }
    beats(4, DARK);
  }

  private void hold(double seconds) {
    session.handle(new SessionInput.LevelStands(Optional.of(Level.LOW)));
    edge(true, now);
    beats((int) (seconds / 0.25), FULL);
    edge(false, now);
    beats(4, DARK);
  }

  private static SampledLight curve(double startSeconds, double effectiveSeconds) {
    long start = RATE.ticks(startSeconds);
    double end = effectiveSeconds + RAMP_SECONDS;
    List<Integer> values = new ArrayList<>();
    int count = (int) (RATE.ticks(end) / PERIOD_TICKS) + 80;
    for (int i = 0; i < count; i++) {
      double since = RATE.seconds((long) (i - 40) * PERIOD_TICKS);
      double open = Math.min(since, end - since) / RAMP_SECONDS;
      values.add((int) ((DARK + (FULL - DARK) * Math.max(0, Math.min(1, open))) / 4));
    }
    return new SampledLight(
        List.of(new Part(Kind.OPENING, start - 40L * PERIOD_TICKS, PERIOD_TICKS, values, false)),
        false);
  }

  private void beats(int count, double counts) {
    for (int i = 0; i < count; i++) {
      now += 0.25;
      session.handle(
          new SessionInput.BeatAt(
              RATE.ticks(now),
              lit ? 1 << Channel.CENTRE_LOW.code() : 0,
              OptionalInt.of((int) Math.round(16 * counts))));
    }
  }

  private void edge(boolean high, double seconds) {
    lit = high;
    session.handle(
        new SessionInput.EdgeAt(new Edge(Channel.CENTRE_LOW, high, RATE.ticks(seconds))));
  }
}
