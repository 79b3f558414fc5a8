package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuickSpeedsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1,1/2,1/4,1/8,1/15,1/30,1/60,1/125,1/250,1/500 | 1/2 1/30 1/125 1/500",
        "1,1/2,1/4,1/8,1/15,1/30,1/60,1/125,1/250,1/500,1/1000 | 1/2 1/30 1/125 1/1000",
        "1,1/2,1/5,1/10,1/25,1/50,1/100,1/250 | 1/2 1/25 1/100 1/250",
        "1,1/2,1/5,1/10,1/25,1/50,1/100,1/400 | 1/2 1/25 1/100 1/400",
        // The fast speed would be the top one: the next slower stands for it.
        "1,1/2,1/4,1/8,1/15,1/30,1/60,1/125 | 1/2 1/30 1/60 1/125",
        "1/30,1/60,1/125,1/250,1/500 | 1/30 1/60 1/125 1/500",
        "2,1,1/2,1/4,1/8 | 1 1/2 1/4 1/8",
        "1/250,1/30,1/125,1/60 | 1/30 1/60 1/125 1/250",
        "1/25,1/50,1/100 | 1/25 1/50 1/100",
        "1/25,1/100 | 1/25 1/100",
        "1/60 | 1/60"
      })
  void slowMiddleFastAndTopOfAnyDial(String dial, String speeds) {
    assertThat(QuickSpeeds.of(dialOf(dial)))
        .extracting(MarkedSpeed::label)
        .containsExactly(speeds.split(" "));
  }

  private static List<MarkedSpeed> dialOf(String list) {
    return Dial.custom(list).orElseThrow().speeds();
  }
}
