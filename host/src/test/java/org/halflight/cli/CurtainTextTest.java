package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.halflight.exposure.CurtainNote;
import org.halflight.record.CurtainTravels;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.words.CurtainWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Travels are invented. */
class CurtainTextTest {
  @Test
  void eachSpeedHasItsCurtainsAndThenComesWhatToDo() {
    List<FiringResult> firings = new ArrayList<>();
    firings.addAll(
        CurtainTravels.firings(
            Phase.AS_LEFT,
            "1/250",
            CurtainTravels.of(14, 14.1, 0.05, 7),
            CurtainTravels.of(14, 14.1, 0.05, 7)));
    firings.addAll(
        CurtainTravels.firings(
            Phase.AS_LEFT,
            "1/500",
            CurtainTravels.of(14, 13.4, -0.5, 3.4),
            CurtainTravels.whole()));
    String said = String.join("\n", CurtainText.lines(firings, List.of()));
    assertThat(said)
        .contains("Curtains, As left")
        .contains("first curtain", "whole frame open", "end against start")
        .containsPattern("1/250 .*14\\.0 ms .*14\\.1 ms .*7\\.0 mm .*even")
        .containsPattern("1/500 .*3\\.4|4\\.3 mm .*end darker by 0\\.33")
        .contains(CurtainWords.note(CurtainNote.DISTANCES_NOT_SAID));
    assertThat(CurtainText.lines(List.of(), List.of())).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(CurtainNote.class)
  void everyNoteSaysWhatToDo(CurtainNote note) {
    assertThat(CurtainWords.note(note)).contains(". ").doesNotContain("{");
  }
}
