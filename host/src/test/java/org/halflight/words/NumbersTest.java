package org.halflight.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {
  @ParameterizedTest
  @CsvSource({
    "4.21, 4.2, s, 4.2 s",
    "59.9, 59.9, s, 59.9 s",
    "1205, 20 min 05 s, '', 20 min 05 s",
    "3725, 1 h 02 min 05 s, '', 1 h 02 min 05 s"
  })
  void aTimeThatRunsHasOneUnitOrSeveral(
      double seconds, String figure, String unit, String sentence) {
    assertThat(Numbers.runningInUnits(seconds)).isEqualTo(new Numbers.InUnit(figure, unit));
    assertThat(Numbers.running(seconds)).isEqualTo(sentence);
  }

  @ParameterizedTest
  @CsvSource({
    "0.015625, 1/64, false, 1/64 s",
    "0.125, 1/8, false, 1/8 s",
    "0.98, 0.980, true, 0.980 s",
    "2, 2.00, true, 2.00 s"
  })
  void aFractionAndItsUnitAreTwoThings(
      double seconds, String figure, boolean inSeconds, String sentence) {
    assertThat(Numbers.fractionInUnit(seconds)).isEqualTo(new Numbers.InUnit(figure, "s"));
    assertThat(Numbers.isReadInSeconds(seconds)).isEqualTo(inSeconds);
    assertThat(Numbers.fraction(seconds)).isEqualTo(sentence);
  }

  @Test
  void daysHaveTheirMonthInWords() {
    assertThat(Numbers.date(LocalDate.of(2026, 9, 3))).isEqualTo("3 September 2026");
    assertThat(Numbers.shortDate(LocalDate.of(2026, 12, 31))).isEqualTo("31 Dec 2026");
  }

  @Test
  void aTimeHasTheUnitOfTheOneThatWasWanted() {
    assertThat(Numbers.timeAndWanted(0.00861, 1 / 128.0)).isEqualTo("8.61 ms, wanted 7.81 ms");
    assertThat(Numbers.timeAndWanted(0.432, 0.125)).isEqualTo("432 ms, wanted 125 ms");
    assertThat(Numbers.timeAndWanted(0.25, 0.5)).isEqualTo("0.250 s, wanted 0.500 s");
  }

  @Test
  void largeErrorsHaveAMinusAsWideAsThePlusAndZeroNoSign() {
    assertThat(Numbers.largeStops(0.142)).isEqualTo("+0.14");
    assertThat(Numbers.largeStops(-1.2)).isEqualTo("\u22121.20");
    assertThat(Numbers.largeStops(-0.004)).isEqualTo("0.00");
  }
}
