package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Test;

class ReboundOfRunTest {
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");
  private static final MarkedSpeed S500 = MarkedSpeed.parse("1/500");

  @Test
  void oneLookServesAllSpeeds() {
    ReboundOfRun run = new ReboundOfRun(Map.of(S250, 0.4e-3));

    assertThat(run.secondsAt(S250)).hasValue(0.4e-3);
    assertThat(run.secondsAt(S500)).hasValue(0.4e-3);
  }

  @Test
  void twoLooksThatAgreeServeTheOthersWithTheirMean() {
    ReboundOfRun run = new ReboundOfRun(Map.of(S60, 0.4e-3, S250, 0.5e-3));

    assertThat(run.isAlike()).isTrue();
    assertThat(run.secondsAt(S250)).hasValue(0.5e-3);
    assertThat(run.secondsAt(S500).getAsDouble()).isCloseTo(0.45e-3, within(1e-15));
  }

  @Test
  void twoLooksThatDifferServeTheirOwnSpeedsOnly() {
    ReboundOfRun run = new ReboundOfRun(Map.of(S60, 0.4e-3, S250, 0.8e-3));

    assertThat(run.isAlike()).isFalse();
    assertThat(run.secondsAt(S60)).hasValue(0.4e-3);
    assertThat(run.secondsAt(S500)).isEmpty();
  }

  @Test
  void nobodyLooked() {
    assertThat(ReboundOfRun.NOT_LOOKED_AT.secondsAt(S500)).isEmpty();
    assertThat(ReboundOfRun.NOT_LOOKED_AT.isAlike()).isTrue();
  }

  @Test
  void aLookIsAskedForFromOneHundredAndTwentyFifthUp() {
    assertThat(ReboundOfRun.isAskedFor(MarkedSpeed.parse("1/125"))).isTrue();
    assertThat(ReboundOfRun.isAskedFor(S500)).isTrue();
    assertThat(ReboundOfRun.isAskedFor(MarkedSpeed.parse("1/100"))).isFalse();
    assertThat(ReboundOfRun.isAskedFor(S60)).isFalse();
  }
}
