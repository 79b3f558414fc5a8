package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.halflight.exposure.CurtainNote;
import org.halflight.session.CentreOnly;
import org.halflight.session.CurtainStep;
import org.halflight.session.SessionEvent;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainAdvice.Act;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.CurtainSign.Kind;
import org.halflight.verdict.Evenness;
import org.junit.jupiter.api.Test;

class CurtainWordsTest {
  @Test
  void everyActSignStepAndFigureHasItsWords() {
    for (Act act : Act.values()) {
      for (Kind kind : Kind.values()) {
        CurtainSign sign = new CurtainSign(kind, 0.25, Optional.of(MarkedSpeed.parse("1/1000")));
        assertThat(CurtainWords.next(new CurtainAdvice(act, CurtainStep.SLIT, Optional.of(sign))))
            .endsWith(".")
            .doesNotContain("{");
      }
    }
    for (CurtainStep step : CurtainStep.values()) {
      assertThat(CurtainWords.step(step)).isNotEmpty();
      assertThat(CurtainWords.how(step)).endsWith(".");
    }
    for (CurtainFigure figure : CurtainFigure.values()) {
      assertThat(CurtainWords.name(figure)).isNotEmpty();
    }
    assertThat(CurtainWords.value(CurtainFigure.SLIT, 2.12)).isEqualTo("2.1 mm");
  }

  @Test
  void whyOnlyTheCentreIsTimedIsSaid() {
    for (CentreOnly why : CentreOnly.values()) {
      assertThat(EventSentences.of(new SessionEvent.CurtainsAtTheCentre(why)).orElseThrow())
          .containsIgnoringCase("the centre")
          .endsWith(".");
    }
    for (CurtainNote note : CurtainNote.values()) {
      assertThat(CurtainWords.note(note)).endsWith(".").doesNotContain("{");
    }
  }

  @Test
  void theEndIsEvenDarkerOrBrighter() {
    assertThat(said(-0.1, 0.1)).isEqualTo("even");
    assertThat(said(-0.3, 0.3)).isEqualTo("end darker by 0.30");
    assertThat(said(0.3, 0.35)).isEqualTo("end brighter by 0.30");
    // Both ends alike, and the centre is not.
    assertThat(said(0.05, 0.3)).isEqualTo("uneven by 0.30");
  }

  private static String said(double slope, double range) {
    Evenness evenness = Evenness.of(slope, range, 1 / 6.0);
    return CurtainWords.of(evenness, Numbers.bareSize(evenness.stops()));
  }

  @Test
  void aFrameThatNeverOpensHasNoWindow() {
    CurtainSign never =
        new CurtainSign(Kind.NO_WINDOW, -2e-3, Optional.of(MarkedSpeed.parse("1/125")));
    assertThat(CurtainWords.of(never))
        .isEqualTo("At 1/125 the whole frame is never open at once, so no flash can light it.");
  }
}
