package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.halflight.session.InventedBench.S500;
import static org.halflight.session.InventedBench.S8;

import java.util.List;
import java.util.Optional;
import org.halflight.session.Assembly.Cells;
import org.halflight.session.Assembly.Place;
import org.halflight.session.Assembly.Switch;
import org.halflight.session.StageSwitch.How;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.junit.jupiter.api.Test;

/** A run in stages of assembly. */
class StagesTest {
  private final InventedBench bench = new InventedBench();

  private static RunSetup stage() {
    return new RunSetup(
            new ShutterUnderTest(
                "J-17", ShutterKind.LEAF, "leaf", Reference.EXACT, CameraCustoms.NONE),
            Phase.ADJUSTING,
            RunPlan.ofStage(List.of(S500, S8)),
            RunConditions.NONE,
            AcceptanceCriteria.USUAL)
        .withCriteria(AcceptanceCriteria.USUAL.with(RunOption.STAGES, true));
  }

  private SessionEvent.StageBegins flip(Switch... switches) {
    for (Switch each : switches) {
      RunSetup now = bench.session.setup().orElseThrow();
      bench.handle(new SessionInput.RunBegins(now.with(each.flipped(now.assembly()))));
    }
    List<SessionEvent.StageBegins> begun = bench.news(SessionEvent.StageBegins.class);
    return begun.get(begun.size() - 1);
  }

  @Test
  void nothingNotedIsTheBareShutter() {
    bench.handle(new SessionInput.RunBegins(stage()));
    assertThat(bench.session.setup().orElseThrow().assembly()).isEqualTo(Assembly.BARE);
    assertThat(bench.session.setup().orElseThrow().conditions().noted())
        .containsEntry("cover", "off")
        .containsEntry("cells", "off")
        .containsEntry("place", "out");
    assertThat(bench.session.untimedTest()).contains(UntimedTest.B);
  }

  @Test
  void aShutterWithCurtainsHasNoCells() {
    RunSetup curtains = stage().withShutterKind(ShutterKind.CURTAIN_LONG_SIDE);
    bench.handle(new SessionInput.RunBegins(curtains));
    assertThat(bench.session.setup().orElseThrow().conditions().noted())
        .containsEntry("cover", "off")
        .doesNotContainKey("cells");
    assertThat(flip(Switch.COVER).assembly())
        .isEqualTo(new Assembly(true, Cells.NONE, Place.BENCH, true));
  }

  @Test
  void aStageIsBTwiceThenTheSlowSpeedThreeTimesThenTheTopOnce() {
    bench.handle(new SessionInput.RunBegins(stage()));
    bench.fire(0.1);
    assertThat(bench.session.untimedTest()).contains(UntimedTest.B);
    bench.fire(2);
    for (int i = 0; i < 3; i++) {
      assertThat(bench.session.shown()).contains(S8);
      bench.fire(S8, 0);
    }
    assertThat(bench.session.shown()).contains(S500);
    assertThat(bench.session.isRunDone()).isFalse();
    bench.fire(S500, 0);
    assertThat(bench.session.isRunDone()).isTrue();
  }

  private void fireSlow() {
    bench.handle(new SessionInput.SpeedChosen(S8));
    bench.fire(S8, 0);
  }

  @Test
  void thereAndBackWithNothingFiredGoesOn() {
    bench.handle(new SessionInput.RunBegins(stage()));
    fireSlow();
    assertThat(flip(Switch.COVER).how()).isEqualTo(How.NEXT);
    SessionEvent.StageBegins back = flip(Switch.COVER);
    assertThat(back.how()).isEqualTo(How.GOES_ON);
    assertThat(back.stage()).isEqualTo(1);
    assertThat(bench.session.runs()).hasSize(1);
    assertThat(bench.session.goodAt(S8)).isEqualTo(1);
    bench.fire(S8, 0);
    assertThat(bench.result(2).run()).isEqualTo(1);
  }

  @Test
  void aStageInWhichNothingWasFiredIsPutRight() {
    bench.handle(new SessionInput.RunBegins(stage()));
    SessionEvent.StageBegins right = flip(Switch.COVER, Switch.PLACE, Switch.PLACE);
    assertThat(right.how()).isEqualTo(How.PUT_RIGHT);
    assertThat(right.stage()).isEqualTo(1);
    assertThat(bench.session.runs()).hasSize(1);
    assertThat(bench.session.setup().orElseThrow().assembly())
        .isEqualTo(new Assembly(true, Cells.NONE, Place.TIGHT));
  }

  @Test
  void switchedBackAfterFiringIsMeasuredAgainAndNothingIsLost() {
    bench.handle(new SessionInput.RunBegins(stage()));
    fireSlow();
    flip(Switch.COVER);
    fireSlow();
    SessionEvent.StageBegins again = flip(Switch.COVER);
    assertThat(again.how()).isEqualTo(How.AGAIN);
    assertThat(again.stage()).isEqualTo(3);
    assertThat(again.earlier()).isEqualTo(1);
    assertThat(bench.session.goodAt(S8)).isZero();
    assertThat(bench.session.results()).hasSize(2);
  }

  @Test
  void otherCellsWantTheLightSetAgain() {
    bench.setLight();
    bench.handle(new SessionInput.RunBegins(stage()));
    fireSlow();
    assertThat(flip(Switch.COVER).lightAgain()).isFalse();
    assertThat(bench.session.light()).isPresent();
    fireSlow();
    assertThat(flip(Switch.CELLS).lightAgain()).isTrue();
    assertThat(bench.session.light()).isEmpty();
    // All the way round with nothing fired: the cells were never changed.
    assertThat(flip(Switch.CELLS, Switch.CELLS, Switch.CELLS).how()).isEqualTo(How.GOES_ON);
    assertThat(bench.session.light()).isPresent();
  }

  @Test
  void theSameStageIsGoneOnWithAfterAStop() {
    bench.handle(new SessionInput.RunBegins(stage()));
    fireSlow();
    bench.handle(new SessionInput.RunBegins(stage()));
    List<SessionEvent.StageBegins> begun = bench.news(SessionEvent.StageBegins.class);
    assertThat(begun.get(begun.size() - 1).how()).isEqualTo(How.GOES_ON);
    assertThat(bench.session.runs()).hasSize(1);
  }

  @Test
  void aSwitchKnowsItsPositions() {
    assertThat(Switch.CELLS.positions(Assembly.BARE)).hasSize(4);
    assertThat(Switch.PLACE.positions(Assembly.BARE)).hasSize(3);
    assertThat(Switch.COVER.positions(Assembly.BARE)).hasSize(2);
    assertThat(Optional.of(Switch.CELLS)).isEqualTo(Switch.find("cells"));
    for (Switch each : Switch.values()) {
      each.positions(Assembly.BARE)
          .forEach(its -> assertThat(Assembly.of(its.in(RunConditions.NONE))).isEqualTo(its));
    }
  }
}
