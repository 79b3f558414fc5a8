package org.halflight.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class StarterLightTableTest {
  /** Worked out by hand: 1000 lm / 4 pi at 10 cm are 7958 lx, 70.9 uA, 3.33 V on 47 k. */
  @Test
  void aLanternTenCentimetresAwayTakesFortySevenKilohms() {
    assertThat(StarterLightTable.kilohms(7958 * StarterLightTable.AMPS_PER_LUX)).hasValue(47);
    assertThat(StarterLightTable.kilohms(5e-6)).isEmpty();
    assertThat(StarterLightTable.kilohms(300e-6)).isEmpty();
  }

  @Test
  void fileAndPageAreWhatIsComputed() throws Exception {
    assertThat(Files.readAllLines(StarterLightTable.CSV)).isEqualTo(StarterLightTable.csv());
    assertThat(StarterLightTable.onThePage()).isEqualTo(StarterLightTable.table());
  }
}
