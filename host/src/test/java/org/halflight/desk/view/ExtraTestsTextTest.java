package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All figures are invented. */
class ExtraTestsTextTest {
  @TempDir Path folder;

  @Test
  void withoutAnythingTriedThereIsNothingInTheList() {
    try (PracticeWork work = new PracticeWork(folder)) {
      assertThat(ExtraTestsText.of(work.view()).entries()).isEmpty();
    }
  }

  @Test
  void theNewestRunComesFirstAndEachHasStateSentencesPictureAndTable() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.handle(new SessionInput.LightSet(new LightLevels(20, 820, 220, 620), TripPoints.EXACT));
      work.begin(Phase.AS_FOUND, 1, "1/60");
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 30);
      work.begin(Phase.AS_LEFT, 1, "1/60");
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 20);
      read(work, What.STOP, "2.8", 820);
      read(work, What.STOP, "4", 420);
      work.handle(
          new SessionInput.LightRead(LightReading.of(What.STOP, "2.8", true, 820, 0.3, 1000, 1)));

      List<ExtraTestsText.Entry> entries = ExtraTestsText.of(work.view()).entries();
      assertThat(entries)
          .extracting(ExtraTestsText.Entry::headline)
          .containsExactly(
              "leak test: OK as far as tested", "aperture check: OK", "leak test: fault");
      assertThat(entries.get(0).run()).isEqualTo("as left, run 2");
      assertThat(entries.get(2).run()).isEqualTo("as found, run 1");
      assertThat(entries).extracting(ExtraTestsText.Entry::key).doesNotHaveDuplicates();
      for (ExtraTestsText.Entry entry : entries) {
        assertThat(entry.sentences()).isNotEmpty();
        assertThat(entry.picture()).isPresent();
        assertThat(entry.twin().orElseThrow().rows()).isNotEmpty();
        assertThat(entry.twin().orElseThrow().note()).contains("invented");
      }
    }
  }

  @Test
  void firingsOfMarkedSpeedsSayNothingOfAnyCheck() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_FOUND, 2, "1/60");
      BenchView view = work.fire();
      assertThat(ExtraTestsText.ofCheck(view.results(), view.runs(), view.results().get(0)))
          .isEmpty();
    }
  }

  @Test
  void theBenchSaysWhatAFiringOfBAndOfTheSelfTimerCameTo() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_FOUND, 1, "1/60");
      work.handle(new SessionInput.UntimedTestChosen(UntimedTest.B));
      int before = work.view().results().size();
      work.rig.holdOpen(true);
      work.rig.rest(1);
      work.rig.holdOpen(false);
      work.until(() -> work.view().results().size() > before);
      BenchView view = work.view();
      FiringResult b = view.results().get(view.results().size() - 1);

      assertThat(b.setting().flatMap(DialSetting::untimedTest)).contains(UntimedTest.B);
      String said = ExtraTestsText.ofCheck(view.results(), view.runs(), b).orElseThrow();
      assertThat(said).startsWith("B opens, holds and closes; open for");
      assertThat(view.said().orElseThrow().text()).isEqualTo(said);

      work.handle(new SessionInput.UntimedTestChosen(UntimedTest.SELF_TIMER));
      BenchView fired = work.fire(Optional.empty(), PracticeMishap.NONE);
      FiringResult atOnce = fired.results().get(fired.results().size() - 1);
      assertThat(atOnce.setting().flatMap(DialSetting::untimedTest))
          .contains(UntimedTest.SELF_TIMER);
      // Fired without it: light at once says that it was not on.
      assertThat(ExtraTestsText.ofCheck(fired.results(), fired.runs(), atOnce).orElseThrow())
          .startsWith("Once the light came at once");
    }
  }

  private static void read(PracticeWork work, What what, String at, double counts) {
    work.handle(new SessionInput.LightRead(LightReading.of(what, at, false, counts, 0.3, 1000, 1)));
  }
}
