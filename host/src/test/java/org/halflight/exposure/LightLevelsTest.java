package org.halflight.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LightLevelsTest {
  private static double counts(double volts) {
    return volts / 5 * 1024;
  }

  @Test
  void sumsBecomeFractionsOfFullLightLessDark() {
    LightLevels light = LightLevels.ofSums(16 * 10, 16 * 810, 64 * 210, 64 * 610);
    assertThat(light.levels()).isEqualTo(new LightLevels.Known(new LevelPair(0.25, 0.75)));
  }

  /** docs/protocol.md: after a start the codes are 2B and A1, about 0.84 V and 3.16 V. */
  @Test
  void theCodesAfterAStartSuitTheLightOfTheBench() {
    assertThat(new ThresholdCodes(0x2B, 0xA1).lowCounts()).isCloseTo(counts(0.86), within(2.0));
    assertThat(new ThresholdCodes(0x2B, 0xA1).highCounts()).isCloseTo(counts(3.16), within(2.0));
    // Bench in a box: 40 mV dark, 4000 mV fully open.
    ThresholdCodes.Outcome found = ThresholdCodes.forLight(counts(0.04), counts(4));
    assertThat(((ThresholdCodes.Found) found).codes().high()).isEqualTo(0xA1);
    assertThat(((ThresholdCodes.Found) found).codes().low()).isBetween(0x2B, 0x2C);
  }

  @Test
  void theCodesFoundGiveLevelsThatTheRuleAllowsAtAnyLightThatIsNotRefused() {
    int found = 0;
    for (double full = 205; full <= 1000; full += 1) {
      for (double dark = 0; dark <= 60; dark += 5) {
        if (ThresholdCodes.forLight(dark, full) instanceof ThresholdCodes.Found codes) {
          LightLevels light =
              new LightLevels(dark, full, codes.codes().lowCounts(), codes.codes().highCounts());
          LightLevels.Outcome levels = light.levels();
          assertThat(levels).isInstanceOf(LightLevels.Known.class);
          assertThat(TwoLevelRule.allows(((LightLevels.Known) levels).levels())).isTrue();
          found++;
        }
      }
    }
    assertThat(found).isGreaterThan(8000);
  }

  @ParameterizedTest
  @CsvSource({
    "10, 1010, 200, 600, SATURATED",
    "500, 400, 200, 600, FULL_NOT_ABOVE_DARK",
    "10, 150, 40, 120, LIGHT_TOO_LOW",
    "100, 800, 200, 600, DARK_TOO_BRIGHT",
    "10, 800, 600, 200, THRESHOLDS_REVERSED",
    "10, 800, 300, 300, THRESHOLDS_REVERSED",
    "50, 800, 50, 600, THRESHOLD_NOT_ABOVE_DARK",
    "10, 800, 200, 800, THRESHOLD_NOT_BELOW_FULL"
  })
  void refusals(double dark, double full, double low, double high, LightLevels.Reason reason) {
    assertThat(new LightLevels(dark, full, low, high).levels())
        .isEqualTo(new LightLevels.Refused(reason));
  }

  @Test
  void noCodesWithoutLight() {
    assertThat(ThresholdCodes.forLightSums(16 * 10, 16 * 100))
        .isEqualTo(new ThresholdCodes.Refused(LightLevels.Reason.LIGHT_TOO_LOW));
  }

  @Test
  void whatTheConverterCannotReadIsRefused() {
    assertThatIllegalArgumentException().isThrownBy(() -> new LightLevels(0, 1024, 1, 2));
    assertThatIllegalArgumentException().isThrownBy(() -> new LightLevels(Double.NaN, 1, 1, 2));
  }
}
