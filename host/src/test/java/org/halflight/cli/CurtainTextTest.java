package org.halflight.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.halflight.exposure.CurtainNote;
import org.halflight.record.CurtainTravels;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
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

  @Test
  void theFourPicturesAreDrawnOfAsFoundAndAsLeft() {
    List<FiringResult> firings = new ArrayList<>();
    for (String speed : List.of("1/250", "1/500", "1/1000")) {
      firings.addAll(
          CurtainTravels.firings(
              Phase.AS_LEFT,
              speed,
              CurtainTravels.of(14, 14.1, 0.05, 7),
              CurtainTravels.of(14, 14.1, 0.05, 7)));
    }
    RunSetup setup =
        new RunSetup("", Phase.AS_LEFT, "curtain", List.of(), Reference.EXACT, 2, UntimedTest.B)
            .withShutterKind(ShutterKind.CURTAIN_LONG_SIDE);
    assertThat(CurtainDrawings.of(firings, List.of(setup), null, null, "")).hasSize(4);
    assertThat(CurtainDrawings.of(firings, List.of(setup), "as-found", null, "")).isEmpty();
    assertThat(CurtainWords.firing(CurtainTravels.whole()))
        .contains("first 14.3 ms, second 13.9 ms; end darker by 0.17 stop");
    assertThat(CurtainWords.firing(CurtainTravels.capped())).contains("first -, second -; -");
  }

  @ParameterizedTest
  @EnumSource(CurtainNote.class)
  void everyNoteSaysWhatToDo(CurtainNote note) {
    assertThat(CurtainWords.note(note)).contains(". ").doesNotContain("{");
  }
}
