package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.halflight.session.CurtainStep;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.verdict.CurtainAdvice;
import org.halflight.verdict.CurtainAdvice.Act;
import org.halflight.verdict.CurtainFigure;
import org.halflight.verdict.CurtainSign;
import org.halflight.verdict.CurtainSign.Kind;
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
  void theEndIsEvenDarkerOrBrighter() {
    assertThat(CurtainWords.slope(-0.1, 1 / 6.0)).isEqualTo("even");
    assertThat(CurtainWords.slope(-0.3, 1 / 6.0)).isEqualTo("end darker by 0.30");
    assertThat(CurtainWords.slope(0.3, 1 / 6.0)).isEqualTo("end brighter by 0.30");
  }

  @Test
  void aFrameThatNeverOpensHasNoWindow() {
    CurtainSign never =
        new CurtainSign(Kind.NO_WINDOW, -2e-3, Optional.of(MarkedSpeed.parse("1/125")));
    assertThat(CurtainWords.of(never))
        .isEqualTo("At 1/125 the whole frame is never open at once, so no flash can light it.");
  }
}
