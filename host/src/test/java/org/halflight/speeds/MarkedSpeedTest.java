package org.halflight.speeds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.halflight.fixtures.PublishedTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MarkedSpeedTest {
  /** APEX, ASA PH2.5-1960: the exact time of every modern marking. */
  @Test
  void modernMarkingsStandForPowersOfTwo() {
    for (Map<String, String> row : PublishedTable.rows("apex_times.csv")) {
      MarkedSpeed speed = MarkedSpeed.parse(row.get("nominal_s"));
      assertThat(1e3 * speed.exactSeconds())
          .as(speed.label())
          .isCloseTo(Double.parseDouble(row.get("exact_ms")), within(5e-7));
      assertThat(1e3 * speed.literalSeconds())
          .as(speed.label())
          .isCloseTo(Double.parseDouble(row.get("nominal_taken_literally_ms")), within(5e-7));
      assertThat(Stops.between(speed.literalSeconds(), speed.exactSeconds()))
          .as(speed.label())
          .isCloseTo(Double.parseDouble(row.get("literal_minus_exact_stops")), within(5.1e-5));
      assertThat(speed.standsForPowerOfTwo()).as(speed.label()).isTrue();
    }
  }

  /** Older dials against APEX: computed from their markings. */
  @Test
  void olderMarkingsAgainstTheModernTimes() {
    for (Map<String, String> row : PublishedTable.rows("older_dials.csv")) {
      MarkedSpeed speed = MarkedSpeed.parse(row.get("marking_s"));
      assertThat(1e3 * speed.seconds(Reference.LITERAL))
          .as(speed.label())
          .isCloseTo(Double.parseDouble(row.get("ms")), within(5e-7));
      double modern = Stops.ratio(-Integer.parseInt(row.get("nearest_modern_Tv")));
      assertThat(Stops.between(speed.literalSeconds(), modern))
          .as(speed.label())
          .isCloseTo(
              Double.parseDouble(row.get("old_minus_modern_exact_stops_(+_=_longer)")),
              within(5.1e-5));
    }
  }

  /** Exif 2.3 works 1/400 s out as a Tv of 8.643856. */
  @Test
  void exifWorkedExample() {
    assertThat(-Stops.between(MarkedSpeed.parse("1/400").literalSeconds(), 1))
        .isCloseTo(8.643856, within(5e-7));
  }

  @ParameterizedTest
  @CsvSource({"1/400,-26", "1/300,-25", "1/100,-20", "1/50,-17", "1/25,-14", "1/10,-10", "1/5,-7"})
  void markingsOffThePowersOfTwoGoToTheNearestThird(String marking, int thirds) {
    MarkedSpeed speed = MarkedSpeed.parse(marking);
    assertThat(speed.exactSeconds()).isEqualTo(Math.pow(2, thirds / 3.0));
    assertThat(speed.standsForPowerOfTwo()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"1/60,1/60", "' 1/60 s',1/60", "1 / 60,1/60", "1s,1", "2,2", "0.5,1/2", "0.3,0.3"})
  void labelsAreAsADialShowsThem(String text, String label) {
    assertThat(MarkedSpeed.parse(text)).hasToString(label);
  }

  @Test
  void halfASecondIsTheSameSettingHoweverWritten() {
    assertThat(MarkedSpeed.parse("0.5")).isEqualTo(MarkedSpeed.parse("1/2"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "B", "T", "1/0", "0", "0.0", "-1", "2/3", "1/", "fast", "1e3", "1/60/2"})
  void whatIsNoMarkingIsRefused(String text) {
    assertThat(MarkedSpeed.find(text)).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> MarkedSpeed.parse(text))
        .withMessageContaining(text);
  }
}
