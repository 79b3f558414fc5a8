package org.halflight.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CardTableTest {
  @Test
  void stopsAreCountedWhereTheStopIsNotKnown() {
    assertThat(CardTable.workingStops(OptionalDouble.empty()))
        .extracting(CardTable.WorkingStop::words)
        .containsExactly("0", "1", "2", "3", "4", "5");
  }

  @Test
  void stopsAreNamedWhereItIs() {
    assertThat(CardTable.workingStops(OptionalDouble.of(3.5)))
        .extracting(CardTable.WorkingStop::words)
        .containsExactly("3.5", "4", "5.6", "8", "11", "16");
    assertThat(CardTable.workingStops(OptionalDouble.of(2.8)))
        .extracting(CardTable.WorkingStop::words)
        .containsExactly("2.8", "4", "5.6", "8", "11", "16");
    assertThat(CardTable.workingStops(OptionalDouble.of(100))).hasSize(1);
  }

  @Test
  void whatToGiveMakesUpForTheError() {
    PageInput hung = SamplePages.all().get("hung");
    List<List<String>> rows = CardTable.speeds(hung);
    // 0.27 stop slow, to the nearest third less; and it hung once.
    assertThat(rows.get(0)).containsExactly("1", "1.21 s", "\u2212\u2153", "hung");
    assertThat(rows.get(9).get(2)).isEqualTo("0");
  }

  @Test
  void onlySpeedsThatASmallStopChangesHaveARow() {
    List<List<String>> rows = CardTable.stopTable(SamplePages.all().get("ten"));
    assertThat(rows).extracting(row -> row.get(0)).containsExactly("1/125", "1/250", "1/500");
    // Blades of 1.6 to 2 ms at 2.2 ms: stopped far down t grows towards t0 = 2.2 + 0.8 to 1.3 ms,
    // about 0.5 to 0.7 stop more than the 0.15 it has; two thirds less in either case.
    assertThat(rows.get(2).get(6)).isEqualTo("\u2212\u2154");
  }
}
