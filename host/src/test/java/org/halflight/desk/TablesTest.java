package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.halflight.export.CsvTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesTest {
  @TempDir private Path folder;

  @Test
  void theTablesOfBeforeStayAndFormulasAreHarmless() throws Exception {
    Path tables = folder.resolve("tables");
    CsvTable first = table("=1+1");
    CsvTable second = table("-0.12");
    assertThat(Tables.write(tables, "mine-1", first, second, first))
        .isEqualTo(tables.resolve("mine-1-firings.csv"));
    assertThat(CsvTable.read(tables.resolve("mine-1-firings.csv"))).isEqualTo(table("'=1+1"));
    Files.delete(tables.resolve("mine-1-firings.csv"));
    // One of them is still there, so all get the next number.
    assertThat(Tables.write(tables, "mine-1", second, first, first))
        .isEqualTo(tables.resolve("mine-1-firings-2.csv"));
    assertThat(CsvTable.read(tables.resolve("mine-1-speeds.csv"))).isEqualTo(second);
    assertThat(CsvTable.read(tables.resolve("mine-1-firings-2.csv"))).isEqualTo(second);
    assertThat(CsvTable.read(tables.resolve("mine-1-speeds-2.csv"))).isEqualTo(table("'=1+1"));
    assertThat(Tables.write(tables, "mine-1", first, second, first))
        .isEqualTo(tables.resolve("mine-1-firings-3.csv"));
  }

  private static CsvTable table(String cell) {
    return new CsvTable(List.of("firing", "words"), List.of(List.of("1", cell)));
  }
}
