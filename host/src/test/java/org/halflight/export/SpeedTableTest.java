package org.halflight.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.session.Outcome;
import org.halflight.session.Source;
import org.halflight.speeds.Reference;
import org.halflight.verdict.Fired;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SpeedTableTest {
  private static final CsvTable TABLE =
      SpeedTable.of(
          Source.RIG,
          List.of(
              Fired.asFound()
                  .at(
                      "1",
                      Reference.EXACT,
                      Map.of(Outcome.STUCK_OPEN, 2, Outcome.DOUBLE, 1),
                      OptionalDouble.of(1.25),
                      0.9,
                      1.0,
                      1.1)
                  .at("1/60", Reference.LITERAL, Map.of(), OptionalDouble.empty())
                  .run(),
              Fired.asLeft().at("1", 0.0, 0.02, 0.01, -0.01, -0.02).run()));

  private static Map<String, String> row(int row, String... headings) {
    return Stream.of(headings)
        .collect(java.util.stream.Collectors.toMap(h -> h, h -> TABLE.cell(row, h)));
  }

  @Test
  void aSpeedOfAPhaseIsARow() {
    assertThat(TABLE.rows()).hasSize(3);
    assertThat(row(0, "source", "phase", "marked_speed", "reference", "reference_ms"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "source", "rig",
                "phase", "as-found",
                "marked_speed", "1",
                "reference", "exact",
                "reference_ms", "1000.000000"));
    assertThat(row(2, "phase", "placement"))
        .isEqualTo(Map.of("phase", "as-left", "placement", "within"));
  }

  @Test
  void whatWasFiredIsCounted() {
    assertThat(row(0, "releases", "timed_and_counted", "stuck_open", "double", "did_not_open"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "releases", "7",
                "timed_and_counted", "3",
                "stuck_open", "2",
                "double", "1",
                "did_not_open", "0"));
  }

  @Test
  void figuresAreInStopsAndMilliseconds() {
    assertThat(row(0, "mean_ms", "mean_error_stops", "median_error_stops", "scatter_stops"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "mean_ms", "2000.000000",
                "mean_error_stops", "1.000000",
                "median_error_stops", "1.000000",
                "scatter_stops", "0.100000"));
    assertThat(
            row(0, "after_rest_error_stops", "tolerance_slow_stops", "placement", "interval_level"))
        .containsExactlyInAnyOrderEntriesOf(
            Map.of(
                "after_rest_error_stops", "1.250000",
                "tolerance_slow_stops", "0.333333",
                "placement", "slow",
                "interval_level", "0.950000"));
  }

  @Test
  void whatIsNotKnownIsEmpty() {
    assertThat(row(1, "mean_ms", "scatter_stops", "mean_low_stops", "main_ms", "rebound_look"))
        .allSatisfy((heading, cell) -> assertThat(cell).as(heading).isEmpty());
    assertThat(row(1, "reference", "reference_ms", "placement"))
        .isEqualTo(
            Map.of("reference", "literal", "reference_ms", "16.666667", "placement", "too-few"));
  }

  static Stream<List<String>> headings() {
    return Stream.of(
        FiringTable.headings(),
        SpeedTable.headings(),
        ExtraTestTable.headings(),
        StatisticTable.headings());
  }

  @ParameterizedTest
  @MethodSource("headings")
  void noHeadingComesTwiceAndEachIsDocumented(List<String> headings) throws IOException {
    assertThat(headings).doesNotHaveDuplicates();
    String docs = Files.readString(Path.of("docs", "file-formats.md"));
    assertThat(headings)
        .filteredOn(heading -> !heading.matches(".*_(area|radius)_linear(_ms)?"))
        .allMatch(heading -> docs.contains("`" + heading + "`"));
  }
}
