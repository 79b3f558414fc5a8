package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S8;

import java.util.List;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;

/** Light that comes while the shutter is cocked. */
class CockingTest {
  private final InventedBench bench = new InventedBench();

  @Test
  void threeStrokesAreLearntAndLaterOnesAreNoFirings() {
    bench.begin(Phase.ADJUSTING, 2, S8);
    learn(0.030, 0.034, 0.028);
    assertThat(bench.session.cockingPattern()).isPresent();
    assertThat(bench.session.isLearningCocking()).isFalse();
    stroke(0.031);
    bench.fire(S8, 0);
    stroke(0.040);
    bench.fire(S8, 0);
    assertThat(bench.outcomes())
        .containsExactly(
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.TIMED,
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.TIMED);
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.news(SessionEvent.LeakWhileCocking.class)).isEmpty();
  }

  @Test
  void aStrokeMayBeHalfAsLongAgainAsTheLongestLearntAndNoLonger() {
    bench.begin(Phase.ADJUSTING, 5, S8);
    learn(0.030, 0.030, 0.030);
    stroke(0.0449);
    stroke(0.0451);
    stroke(0.0201);
    stroke(0.0199);
    assertThat(bench.outcomes().subList(3, 7))
        .containsExactly(
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.NEVER_FULLY_OPEN,
            Outcome.LIGHT_WHILE_COCKING,
            Outcome.NEVER_FULLY_OPEN);
  }

  @Test
  void brightLightIsNotThatOfADimStroke() {
    bench.begin(Phase.ADJUSTING, 5, S125);
    learn(0.030, 0.030, 0.030);
    bench.fire(0.030);
    assertThat(bench.result(4).outcome()).isEqualTo(Outcome.TIMED);
  }

  @Test
  void whereTheBladesShouldStayShutItIsALeak() {
    bench.begin(
        InventedBench.setup(
            Phase.ADJUSTING, 2, List.of(S8), List.of(), new CameraCustoms(false, true)));
    learn(0.030, 0.030, 0.030);
    stroke(0.030);
    assertThat(bench.news(SessionEvent.LeakWhileCocking.class)).hasSize(4);
    assertThat(bench.result(4).notes().leak()).isTrue();
    assertThat(bench.result(4).isGood()).isFalse();
  }

  @Test
  void lightThatAReleaseBringsIsNeverCocking() {
    bench.begin(Phase.ADJUSTING, 5, S8);
    learn(0.030, 0.030, 0.030);
    bench.press();
    bench.now += 0.02;
    bench.dimLight(0.030);
    bench.letGo();
    bench.quiet();
    assertThat(bench.result(4).outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
  }

  @Test
  void withoutAReleaseInputDoubtGoesToTheFiring() {
    bench.begin(Phase.ADJUSTING, 9, S125);
    bench.handle(new SessionInput.CockingLearnt(true));
    for (int i = 0; i < 3; i++) {
      bench.fire(S125, 0.4);
    }
    // Fits the pattern and the speed alike: it counts, and the person may reject it.
    bench.fire(S125, 0.4);
    assertThat(bench.result(4).outcome()).isEqualTo(Outcome.TIMED);
    // Fits the pattern, but is over half a stop off the speed.
    bench.fire(S125, 0.6);
    assertThat(bench.result(5).outcome()).isEqualTo(Outcome.LIGHT_WHILE_COCKING);
    // Once a release was seen, light without one is no firing.
    bench.releaseWithoutLight();
    bench.pass(ReleaseTiming.LATEST_LIGHT_SECONDS);
    bench.fire(S125, 0.4);
    assertThat(bench.result(7).outcome()).isEqualTo(Outcome.LIGHT_WHILE_COCKING);
  }

  @Test
  void strokesThatAreNotAlikeAreNotLearntFrom() {
    learn(0.030, 0.090, 0.030);
    assertThat(bench.session.cockingPattern()).isEmpty();
    assertThat(bench.session.isLearningCocking()).isTrue();
    // The oldest go; three alike in a row are enough.
    stroke(0.030);
    stroke(0.032);
    assertThat(bench.session.cockingPattern()).isPresent();
  }

  @Test
  void endingEarlyLearnsNothing() {
    bench.handle(new SessionInput.CockingLearnt(true));
    stroke(0.030);
    stroke(0.030);
    bench.handle(new SessionInput.CockingLearnt(false));
    assertThat(bench.news(SessionEvent.CockingNotKnown.class))
        .containsExactly(new SessionEvent.CockingNotKnown(2));
    stroke(0.030);
    assertThat(bench.result(3).outcome()).isEqualTo(Outcome.NEVER_FULLY_OPEN);
    bench.handle(new SessionInput.CockingLearnt(false));
    assertThat(bench.news(SessionEvent.CockingNotKnown.class)).hasSize(1);
  }

  @Test
  void anotherCameraHasAnotherPattern() {
    bench.begin(Phase.ADJUSTING, 1, S8);
    learn(0.030, 0.030, 0.030);
    bench.begin(new RunSetup("another", Phase.ADJUSTING, "leaf", List.of(S8), Reference.EXACT, 1));
    assertThat(bench.session.cockingPattern()).isEmpty();
  }

  private void learn(double... seconds) {
    bench.handle(new SessionInput.CockingLearnt(true));
    for (double each : seconds) {
      stroke(each);
    }
  }

  private void stroke(double seconds) {
    bench.dimLight(seconds);
    bench.quiet();
  }
}
