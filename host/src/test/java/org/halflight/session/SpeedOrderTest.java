package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.halflight.session.InventedBench.S125;
import static org.halflight.session.InventedBench.S250;
import static org.halflight.session.InventedBench.S500;
import static org.halflight.session.InventedBench.S60;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Which speed is shown next. */
class SpeedOrderTest {
  private final InventedBench bench = new InventedBench();

  @Test
  void nextAndPreviousStopAtTheEnds() {
    bench.begin(Phase.AS_LEFT, 2, S60, S125, S250);
    bench.handle(new SessionInput.PreviousChosen());
    assertThat(bench.session.shown()).contains(S60);
    bench.handle(new SessionInput.NextChosen());
    bench.handle(new SessionInput.NextChosen());
    assertThat(bench.session.shown()).contains(S250);
    bench.handle(new SessionInput.NextChosen());
    assertThat(bench.session.shown()).contains(S250);
    bench.handle(new SessionInput.PreviousChosen());
    assertThat(bench.session.shown()).contains(S125);
  }

  @Test
  void anyOrderMayBeChosenAndWhatLacksIsComeBackTo() {
    bench.begin(Phase.AS_LEFT, 1, S60, S125, S250);
    bench.handle(new SessionInput.SpeedChosen(S250));
    bench.fire(S250, 0);
    assertThat(bench.session.shown()).contains(S60);
    bench.fire(S60, 0);
    bench.fire(S125, 0);
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.news(SessionEvent.RunDone.class)).hasSize(1);
  }

  @Test
  void aSpeedChosenThoughItIsDoneStays() {
    bench.begin(Phase.AS_LEFT, 1, S60, S125);
    bench.fire(S60, 0);
    bench.handle(new SessionInput.PreviousChosen());
    bench.fire(S60, 0);
    bench.fire(S60, 0);
    assertThat(bench.session.shown()).contains(S60);
    assertThat(bench.session.goodAt(S60)).isEqualTo(3);
    bench.handle(new SessionInput.NextChosen());
    bench.fire(S125, 0);
    assertThat(bench.session.isRunDone()).isTrue();
  }

  @Test
  void whileAdjustingTheChosenSpeedStaysOnTheScreen() {
    bench.begin(Phase.ADJUSTING, 1, S60, S125);
    bench.handle(new SessionInput.SpeedChosen(S60));
    for (int i = 0; i < 2 * Session.ENOUGH_TRIES; i++) {
      bench.fire(S60, 0.5);
    }
    assertThat(bench.session.shown()).contains(S60);
    assertThat(bench.news(SessionEvent.EnoughToKnow.class)).isEmpty();
  }

  @Test
  void withoutARunChoosingAndSteppingDoNoHarm() {
    bench.handle(new SessionInput.NextChosen());
    bench.handle(new SessionInput.PreviousChosen());
    assertThat(bench.session.setting()).isEmpty();
    bench.handle(new SessionInput.SpeedChosen(S60));
    bench.fire(S60, 0);
    assertThat(bench.result(1).shown()).contains(S60);
    assertThat(bench.result(1).run()).isZero();
    assertThat(bench.session.isRunDone()).isFalse();
  }

  @Test
  void theTopSpeedIsToBeSetBeforeCockingWhereTheCameraWantsIt() {
    CameraCustoms customs = new CameraCustoms(true, false);
    bench.begin(InventedBench.setup(Phase.AS_LEFT, 2, List.of(S250, S500), List.of(), customs));
    assertThat(bench.news(SessionEvent.SetBeforeCocking.class)).isEmpty();
    bench.fire(S250, 0);
    bench.fire(S250, 0);
    bench.fire(S500, 0);
    bench.fire(S500, 0);
    assertThat(bench.news(SessionEvent.SetBeforeCocking.class))
        .containsExactly(new SessionEvent.SetBeforeCocking(S500));

    InventedBench other = new InventedBench();
    other.begin(Phase.AS_LEFT, 1, S500);
    assertThat(other.news(SessionEvent.SetBeforeCocking.class)).isEmpty();
  }

  @Test
  void aNewRunOfTheSamePhaseStartsItsCountsAnew() {
    RunSetup setup = InventedBench.custom(Phase.AS_LEFT, 1, S60);
    bench.begin(setup);
    bench.fire(S60, 0);
    assertThat(bench.session.isRunDone()).isTrue();
    bench.begin(setup);
    assertThat(bench.session.isRunDone()).isFalse();
    bench.fire(S60, 0);
    assertThat(bench.session.results()).extracting(FiringResult::run).containsExactly(1, 2);
  }

  @Test
  void theSetupOfTheRunUnderWayGoesOnWithIt() {
    RunSetup setup = InventedBench.custom(Phase.AS_FOUND, 1, S60, S125);
    bench.begin(setup);
    bench.fire(S60, 0);
    bench.fire(S60, 0);
    assertThat(bench.session.shown()).contains(S125);
    bench.begin(setup);
    assertThat(bench.session.shown()).contains(S125);
    bench.fire(S125, 0);
    assertThat(bench.session.isRunDone()).isTrue();
    assertThat(bench.session.results())
        .extracting(FiringResult::afterRest)
        .containsExactly(true, false, false);
  }

  @Test
  void rejectedTriesDoNotMakeASpeedErratic() {
    bench.begin(Phase.AS_LEFT, 3, S60);
    for (int i = 0; i < Session.ENOUGH_TRIES + 2; i++) {
      bench.fire(S60, 0);
      bench.handle(new SessionInput.LastRejected("knocked the bench"));
    }
    assertThat(bench.news(SessionEvent.EnoughToKnow.class)).isEmpty();
    assertThat(bench.session.results()).hasSize(Session.ENOUGH_TRIES + 2);
  }

  @Test
  void unlikeConditionsAreNamed() {
    RunConditions found =
        new RunConditions(OptionalDouble.of(86_400), Map.of("cells", "on", "wet", "yes"));
    RunConditions left = new RunConditions(OptionalDouble.empty(), Map.of("cells", "off"));
    assertThat(found.unlike(left)).containsExactly("cells", "wet");
    assertThat(found.unlike(found)).isEmpty();
    assertThatThrownBy(() -> new RunConditions(OptionalDouble.of(-1), Map.of()))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
