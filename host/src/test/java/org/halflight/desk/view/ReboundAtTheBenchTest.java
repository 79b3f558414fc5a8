package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.halflight.session.Phase;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Sentences;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures are those of invented shutters. */
class ReboundAtTheBenchTest {
  @TempDir private Path folder;

  @Test
  void mainOpeningAndReboundAreUnderTheTime() {
    try (PracticeWork work =
        new PracticeWork(folder, InventedShutters.bouncing(InventedShutters.dial(), 7))) {
      work.begin(Phase.AS_LEFT, 3, "1/500");
      BenchView view = work.fire();
      assertThat(NumeralsText.of(view).detail()).matches("main [\\d.]+ ms, rebound 0\\.4\\d+ ms");
      work.fire();
      work.fire();
      assertThat(verdict(work, "1/500")).contains("rebound 0.4").doesNotContain("not checked");
    }
  }

  @Test
  void whereNobodyLookedTheVerdictSaysSoAndNothingIsAsked() {
    try (PracticeWork work = new PracticeWork(folder)) {
      work.begin(Phase.AS_LEFT, 3, "1/60", "1/125");
      for (int i = 0; i < 6; i++) {
        work.fire();
      }
      assertThat(word(work, "1/60")).isEqualTo("within");
      assertThat(word(work, "1/125")).isEqualTo("within, rebound not checked");
      assertThat(verdict(work, "1/125")).contains("Rebound not checked.");
      assertThat(work.view().question()).isEmpty();
    }
  }

  private static String verdict(PracticeWork work, String speed) {
    return String.join(" ", BenchPictures.verdict(work.view(), MarkedSpeed.parse(speed)));
  }

  private static String word(PracticeWork work, String speed) {
    return Sentences.verdict(ViewedRuns.at(work.view(), MarkedSpeed.parse(speed)).orElseThrow());
  }
}
