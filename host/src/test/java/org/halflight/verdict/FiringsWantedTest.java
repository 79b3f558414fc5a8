package org.halflight.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import org.halflight.words.DecisionWords;
import org.junit.jupiter.api.Test;

class FiringsWantedTest {
  private static String said(int inAll, OptionalInt planned) {
    return DecisionWords.wanted(new FiringsWanted(3, OptionalInt.of(inAll), planned));
  }

  @Test
  void saysWhatTheDecisionTakesAndWhatIsPlanned() {
    assertThat(said(4, OptionalInt.of(5)))
        .isEqualTo("At this scatter 4 firings would decide; 5 are planned.");
    assertThat(said(12, OptionalInt.of(5))).contains("12 firings").endsWith("in the next run.");
    assertThat(said(3, OptionalInt.of(3))).isEqualTo("3 firings are enough to decide.");
    assertThat(said(8, OptionalInt.empty())).contains("about 8 firings");
    assertThat(DecisionWords.wanted(new FiringsWanted(3, OptionalInt.empty(), OptionalInt.of(5))))
        .contains("no number of firings up to " + Decision.MOST);
  }
}
