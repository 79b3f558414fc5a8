package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A decimal comma is taken, and a comma that separates still separates. */
class DecimalCommaTest {
  @Test
  void toleranceWithACommaIsTheSame() {
    assertThat(Tolerances.find("0,33")).isEqualTo(Tolerances.find("0.33")).isPresent();
    assertThat(Tolerances.find("1/500=0,5; 1/60=0,25"))
        .isEqualTo(Tolerances.find("1/500=0.5, 1/60=0.25"))
        .isPresent();
    assertThat(Tolerances.find("1/500=1/2,1/60=1/4"))
        .isEqualTo(Tolerances.find("1/500=0.5, 1/60=0.25"));
    assertThat(Tolerances.find("7,5%")).isEqualTo(Tolerances.find("7.5%")).isPresent();
    assertThat(Tolerances.find("+0,5-0,3")).isEqualTo(Tolerances.find("+0.5-0.3")).isPresent();
  }

  @Test
  void thousandsMarkIsNoNumber() {
    assertThat(Tolerances.find("1.234,5")).isEmpty();
    assertThat(MarkedSpeed.find("1.234,5")).isEmpty();
    assertThat(Tolerance.find("1,234.5")).isEmpty();
  }

  @Test
  void commasOfADialSeparateWhereTheyMay() {
    assertThat(Dial.custom("1,1/2,1/60").orElseThrow().speeds()).hasSize(3);
    assertThat(Dial.custom("0,5, 1/60").orElseThrow().speeds())
        .extracting(MarkedSpeed::label)
        .containsExactly("1/2", "1/60");
    assertThat(Dial.custom("1,5; 1/60").orElseThrow().speeds())
        .extracting(MarkedSpeed::label)
        .containsExactly("1.5", "1/60");
  }
}
