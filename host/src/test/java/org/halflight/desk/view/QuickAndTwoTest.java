package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.chart.FiringRow;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.SessionInput;
import org.halflight.session.TwoSpeeds;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window shows of a quick look, and of two speeds that are adjusted at once. */
class QuickAndTwoTest {
  private static final MarkedSpeed SLOW = MarkedSpeed.parse("1");
  private static final MarkedSpeed FAST = MarkedSpeed.parse("1/15");
  private static final Optional<TwoSpeeds> TWO = Optional.of(new TwoSpeeds(SLOW, FAST));

  @TempDir private Path folder;

  @Test
  void quickLookSaysSetThenWindAndWhyASpeedIsFiredAgain() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(
          Phase.AS_FOUND, 5, AcceptanceCriteria.USUAL.with(RunOption.QUICK, true), "1/2", "1/500");
      assertThat(MessageText.of(work.view()).text()).startsWith("Do not set the light first.");
      NextText first = NextText.of(work.view());
      assertThat(first.doing()).isEqualTo("SET, then wind and fire");
      assertThat(first.count()).isEqualTo("0 of 1");
      work.fire();
      assertThat(NextText.of(work.view()).large()).isEqualTo("1/500");
      assertThat(NextText.of(work.view()).doing()).isEqualTo("SET, then wind and fire");
      BenchView view = work.fire();
      assertThat(NextText.of(view).doing()).isEqualTo("Again: the largest error so far");
      assertThat(NextText.of(view).count()).isEqualTo("1 of 3");
      assertThat(MessageText.of(view).text())
          .as("NEXT says why already")
          .doesNotContain("largest error");
    }
  }

  @Test
  void twoSpeedsAreSideBySideAndSayWhatTheAdjustmentDid() {
    try (PracticeWork work =
        new PracticeWork(folder, InventedShutters.dirtySlowTrain(InventedShutters.dial(), 20))) {
      work.begin(Phase.ADJUSTING, 5, "1", "1/15");
      assertThat(TwoText.of(work.view())).isEmpty();
      work.handle(new SessionInput.TwoChosen(TWO));
      assertThat(NextText.of(work.view()).doing()).isEqualTo("Fire here, then 1/15");
      fireBoth(work);
      assertThat(MessageText.of(work.view()).text())
          .as("beside two means")
          .startsWith("Last firing, 1/15");
      TwoText before = TwoText.of(work.view()).orElseThrow();
      assertThat(before.sides()).extracting(TwoText.Side::speed).containsExactly("1 s", "1/15");
      assertThat(before.sides()).allMatch(side -> side.word().isEmpty());
      assertThat(NextText.of(work.view()).doing()).isEqualTo("Adjust, then note it (A)");

      work.handle(new SessionInput.Adjusted("train cleaned"));
      assertThat(work.view().shown().flatMap(its -> its.speed()))
          .as("the dial stays")
          .contains(FAST);
      assertThat(TwoText.of(work.view()).orElseThrow().sides())
          .allMatch(side -> side.figure().equals("\u2013"));
      work.rig.setShutter(InventedShutters.cleanedSlowTrain(InventedShutters.dial(), 21));
      fireBoth(work);
      TwoText after = TwoText.of(work.view()).orElseThrow();
      assertThat(after.sides().get(0).word()).isEqualTo("closer");
      assertThat(after.sides().get(0).detail())
          .matches("mean of 2, ±0\\.\\d\\d stop, before \\+1\\.\\d\\d");
      assertThat(after.spoken()).contains("1 s", "closer", "1/15");

      BenchPictures.All pictures = BenchPictures.all(work.view(), Optional.of(SLOW));
      assertThat(
              List.of(
                  pictures.large().picture().orElseThrow(), pictures.row().picture().orElseThrow()))
          .allMatch(FiringRow.class::isInstance);
      assertThat(BenchPictures.speedMap(work.view()).orElseThrow().table().rows())
          .extracting(row -> row.get(1))
          .contains("adjusting")
          .doesNotContain("as found");
    }
  }

  @Test
  void whatWentWrongIsShownByItself() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.ADJUSTING, 5, "1", "1/15");
      work.handle(new SessionInput.TwoChosen(TWO));
      work.fire(Optional.of(SLOW), PracticeMishap.DOUBLE);
      assertThat(TwoText.of(work.view())).isEmpty();
      work.fire();
      assertThat(TwoText.of(work.view())).isPresent();
    }
  }

  @Test
  void keyIsOfferedWhileAdjustingOnly() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_LEFT, 3, "1", "1/15");
      assertThat(offered(work)).doesNotContain(UserAction.TWO);
      work.handle(new SessionInput.TwoChosen(TWO));
      assertThat(MessageText.of(work.view()).text())
          .isEqualTo(
              "Two speeds at once belong to adjusting. Begin a run with that stage of work first.");
      work.begin(Phase.ADJUSTING, 3, "1", "1/15");
      assertThat(offered(work)).contains(UserAction.TWO);
    }
  }

  private static List<UserAction> offered(PracticeWork work) {
    return KeyHints.of(work.view()).stream().map(KeyHints.Hint::act).toList();
  }

  private static void fireBoth(PracticeWork work) {
    for (int i = 0; i < 4; i++) {
      work.fire();
    }
    assertThat(work.view().two().orElseThrow().isFired()).isTrue();
  }
}
