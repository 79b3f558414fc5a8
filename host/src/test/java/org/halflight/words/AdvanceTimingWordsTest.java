package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.InventedAdvance;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.junit.jupiter.api.Test;

class AdvanceTimingWordsTest {
  private static final double BLADES = InventedAdvance.BLADES;
  private static final double SLOW = InventedAdvance.SLOW;

  @Test
  void whichWayToAdjustIsSaid() {
    assertThat(lines(0.012).get(0))
        .isEqualTo(
            "The advance unlocks 12.0 ms before the blades open (\u00b10.3 ms), too early."
                + " Adjust the linkage so that it unlocks later, between 0 ms and +3"
                + " ms.");
    assertThat(lines(-0.008).get(0)).contains("8.0 ms after the blades open", "unlocks earlier");
    assertThat(lines(0.0015).get(0)).contains("good", "just ahead");
    assertThat(lines(0.0031).get(0)).contains("too close to call");
    assertThat(lines(0.0015)).anyMatch(line -> line.startsWith("No release sensor was seen"));
  }

  @Test
  void theNewestTrialStandsByItselfWithTheWayToTurn() {
    assertThat(newest(0.0012))
        .isEqualTo("Trial 2: the advance unlocks 1.2 ms before the blades open: good.");
    assertThat(newest(0.009))
        .isEqualTo(
            "Trial 2: the advance unlocks 9.0 ms before the blades open: too early. Adjust it"
                + " so that the advance unlocks later.");
    assertThat(newest(BLADES - 0.0015))
        .startsWith("Trial 2 has no interval. Too close to separate")
        .contains("Adjust it so that the advance unlocks earlier.");
  }

  private static String newest(double interval) {
    return AdvanceTimingWords.newest(
        InventedAdvance.trials(Phase.ADJUSTING, 0.02, interval).linkage());
  }

  @Test
  void scatterIsSaidOfTheRunAndNotWhileAdjusting() {
    InventedAdvance camera = InventedAdvance.trials(Phase.AS_LEFT, 0.0014, 0.0016);

    assertThat(ExtraTestWords.lines(camera.linkage()))
        .anyMatch(line -> line.contains("scatters by 0.1 ms (standard deviation of 2 trials)"));
    assertThat(
            ExtraTestWords.lines(InventedAdvance.trials(Phase.ADJUSTING, 0.0014, 0.0016).linkage()))
        .noneMatch(line -> line.contains("scatters"));
  }

  @Test
  void overlappingClicksSayBetweenWhat() {
    String line = lines(BLADES - 0.0015).get(0);

    assertThat(line).startsWith("Too close to separate").contains("It unlocks between ");
  }

  @Test
  void nothingHeardSaysWhatToDo() {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
    camera.fire(SLOW);

    assertThat(ExtraTestWords.inShort(camera.linkage()))
        .contains("No click came", "wire of the click sensor");
  }

  @Test
  void someTrialsWithoutAnIntervalAreCounted() {
    InventedAdvance camera = InventedAdvance.trials(Phase.AS_LEFT, 0.0015, BLADES - 0.0015, 0.0015);

    assertThat(ExtraTestWords.lines(camera.linkage()))
        .anyMatch(
            line -> line.startsWith("One of 3 trials has no interval. Too close to separate"));
  }

  @Test
  void everyVerdictAndReasonHasItsSentenceAndItsWord() {
    for (AdvanceTrial.Reason reason : AdvanceTrial.Reason.values()) {
      assertThat(Words.has("timing.reason." + Words.key(reason))).as(Words.key(reason)).isTrue();
      assertThat(Words.has("timing.word." + Words.key(reason))).as(Words.key(reason)).isTrue();
    }
    Arrays.stream(AdvanceTiming.Verdict.values())
        .filter(verdict -> verdict != AdvanceTiming.Verdict.NOT_TOLD)
        .forEach(
            verdict -> {
              assertThat(Words.has("timing." + Words.key(verdict))).as(Words.key(verdict)).isTrue();
              assertThat(Words.has("timing.word." + Words.key(verdict)))
                  .as(Words.key(verdict))
                  .isTrue();
            });
  }

  private static List<String> lines(double interval) {
    return ExtraTestWords.lines(InventedAdvance.trials(Phase.ADJUSTING, interval).linkage());
  }
}
