package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.InventedAdvance;
import org.halflight.session.Phase;
import org.halflight.session.UntimedTest;
import org.junit.jupiter.api.Test;

class AdvanceTimingWordsTest {
  private static final double BLADES = InventedAdvance.BLADES;

  @Test
  void theIntervalIsAFigureAndSaidNotToBeJudged() {
    assertThat(lines(Phase.ADJUSTING, 0.012))
        .containsExactly(
            "The advance unlocked 12.0 ms before the blades opened (\u00b10.3 ms). An earlier"
                + " version measured this interval; it is no longer judged.");
    assertThat(lines(Phase.ADJUSTING, -0.008).get(0)).contains("8.0 ms after the blades opened");
  }

  @Test
  void scatterIsSaidOfTheRunAndNotWhileAdjusting() {
    assertThat(lines(Phase.AS_LEFT, 0.0014, 0.0016))
        .anyMatch(line -> line.contains("scatters by 0.1 ms (standard deviation of 2 trials)"));
    assertThat(lines(Phase.ADJUSTING, 0.0014, 0.0016)).noneMatch(line -> line.contains("scatters"));
  }

  @Test
  void withoutAnIntervalTheReasonIsSaid() {
    InventedAdvance camera = new InventedAdvance();
    camera.begin(Phase.ADJUSTING, 1, UntimedTest.WIND_AND_RELEASE);
    camera.fire(InventedAdvance.SLOW);

    assertThat(ExtraTestWords.inShort(camera.timing()))
        .isEqualTo(
            "Adjusting: No interval between advance and shutter: no click. An earlier version"
                + " measured this; it is no longer judged.");
  }

  @Test
  void someTrialsWithoutAnIntervalAreCounted() {
    assertThat(lines(Phase.AS_LEFT, 0.0015, BLADES - 0.0015, 0.0015))
        .contains("One of 3 trials has no interval: too close to separate.");
  }

  @Test
  void everyReasonHasItsWords() {
    for (AdvanceTrial.Reason reason : AdvanceTrial.Reason.values()) {
      assertThat(Words.has("timing.reason." + Words.key(reason))).as(Words.key(reason)).isTrue();
    }
  }

  private static List<String> lines(Phase phase, double... intervals) {
    return ExtraTestWords.lines(InventedAdvance.trials(phase, intervals).timing());
  }
}
