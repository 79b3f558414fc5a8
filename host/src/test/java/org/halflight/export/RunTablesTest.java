package org.halflight.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.session.Source;
import org.halflight.speeds.Reference;
import org.halflight.verdict.Fired;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.RunSummary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunTablesTest {
  private static final RunSummary FOUND =
      Fired.asFound()
          .at("1", Reference.EXACT, Map.of(), OptionalDouble.of(1.25), Fired.errors(1, 6, 0.8, 0.1))
          .at("1/60", 0.1)
          .run();
  private static final RunSummary LEFT =
      Fired.asLeft().at("1", Fired.errors(2, 6, 0.05, 0.02)).at("1/60", 0.1, 0.12).run();

  @TempDir private Path folder;

  private CsvTable readBack(CsvTable table) {
    Path path = folder.resolve("table.csv");
    table.write(OutFiles.of(true, List.of()).file(path, FileKind.TABLE), CsvTable.Dialect.PLAIN);
    return CsvTable.read(path);
  }

  private static String cell(CsvTable table, int row, String heading) {
    return table.rows().get(row).get(table.headings().indexOf(heading));
  }

  @Test
  void everyStatisticHasARowWithWhatItWants() {
    CsvTable table = readBack(StatisticTable.of(Source.PRACTICE, List.of(RunStatistics.of(FOUND))));
    Map<String, List<String>> first =
        table.rows().stream()
            .filter(row -> row.get(2).equals("1"))
            .collect(java.util.stream.Collectors.toMap(row -> row.get(3), row -> row));
    assertThat(first.get("mean_error").get(5)).isEqualTo("0.800000");
    assertThat(first.get("scatter").get(5)).isEqualTo("0.100000");
    assertThat(first.get("after_rest_error").get(5)).isEqualTo("1.250000");
    assertThat(first.get("outliers").subList(5, 9)).containsExactly("", "6", "15", "too-few");
    assertThat(first.get("mean_error").subList(0, 2)).containsExactly("practice", "as-found");
    assertThat(first).containsKeys("creep", "creep_p", "one_exposure_low", "robust_scatter");
    assertThat(table.rows())
        .filteredOn(row -> row.get(2).equals("1/60") && row.get(3).equals("scatter"))
        .singleElement()
        .satisfies(row -> assertThat(row.get(8)).isEqualTo("too-few"));
  }

  @Test
  void aComparisonHasARowASpeedAndThreeForTheDial() {
    CsvTable table = readBack(ComparisonTable.of(Source.RIG, RunComparison.of(FOUND, LEFT)));
    assertThat(table.rows())
        .extracting(row -> row.get(1))
        .containsExactly("1", "1/60", "whole-dial", "slow-speeds", "fast-speeds");
    assertThat(cell(table, 0, "shift_stops")).isEqualTo("-0.750000");
    assertThat(cell(table, 0, "finding")).isEqualTo("changed");
    assertThat(cell(table, 0, "rank_p")).isNotEmpty();
    assertThat(cell(table, 0, "scatter_ratio")).isEqualTo("0.200000");
    assertThat(cell(table, 1, "finding")).isEqualTo("not-comparable");
    assertThat(cell(table, 1, "shift_stops")).isEmpty();
    assertThat(cell(table, 2, "finding")).isEqualTo("not-shown");
  }
}
