package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThirdsOfStopTest {
  @ParameterizedTest
  @CsvSource({
    "0,0", "0.6,-2", "-0.3,1", "0.1,0", "-0.1,0", "0.17,-1", "0.5,-1", "-0.5,1", "2.4,-7"
  })
  void aSlowShutterAsksForLess(double errorStops, int thirds) {
    assertThat(ThirdsOfStop.toCompensate(errorStops).thirds()).isEqualTo(thirds);
  }

  @Test
  void whatIsLeftIsNeverMoreThanASixth() {
    for (int i = -3000; i <= 3000; i++) {
      double error = i / 1000.0;
      assertThat(Math.abs(error + ThirdsOfStop.toCompensate(error).stops()))
          .as("error %s", error)
          .isLessThanOrEqualTo(1 / 6.0 + 1e-12);
    }
  }

  @Test
  void notANumberIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> ThirdsOfStop.toCompensate(Double.NaN));
  }
}
