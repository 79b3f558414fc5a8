package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.halflight.exposure.LightLevels;
import org.halflight.exposure.TripPoints;
import org.halflight.session.LightReading;
import org.halflight.session.LightReading.What;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All figures are invented. */
class TriedTextTest {
  @TempDir Path folder;

  @Test
  void withoutAnythingTriedThereIsNothingInTheList() {
    try (PracticeWork work = new PracticeWork(folder)) {
      assertThat(TriedText.of(work.view()).entries()).isEmpty();
    }
  }

  @Test
  void theNewestRunComesFirstAndEachHasStateSentencesPictureAndTable() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.tell(new SessionInput.LightSet(new LightLevels(20, 820, 220, 620), TripPoints.EXACT));
      work.begin(Phase.AS_FOUND, 1, "1/60");
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 30);
      work.begin(Phase.AS_LEFT, 1, "1/60");
      read(work, What.LAMP_COVERED, "", 20);
      read(work, What.SHUT_COCKED, "", 20);
      read(work, What.STOP, "2.8", 820);
      read(work, What.STOP, "4", 420);
      work.tell(
          new SessionInput.LightRead(LightReading.of(What.STOP, "2.8", true, 820, 0.3, 1000, 1)));

      List<TriedText.Entry> entries = TriedText.of(work.view()).entries();
      assertThat(entries)
          .extracting(TriedText.Entry::headline)
          .containsExactly("leak test: OK", "stop check: OK", "leak test: fault");
      assertThat(entries.get(0).run()).isEqualTo("As left, run 2");
      assertThat(entries.get(2).run()).isEqualTo("As found, run 1");
      assertThat(entries).extracting(TriedText.Entry::key).doesNotHaveDuplicates();
      for (TriedText.Entry entry : entries) {
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
      assertThat(TriedText.ofCheck(view.results(), view.runs(), view.results().get(0))).isEmpty();
    }
  }

  private static void read(PracticeWork work, What what, String at, double counts) {
    work.tell(new SessionInput.LightRead(LightReading.of(what, at, false, counts, 0.3, 1000, 1)));
  }
}
