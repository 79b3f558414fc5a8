package org.halflight.cli;

import org.halflight.export.CsvTable;
import org.halflight.files.OutFile;
import picocli.CommandLine.Option;

/** For whom tables are written. */
final class TableOptions {
  @Option(names = "--spreadsheet")
  private boolean spreadsheet;

  /** Writes a table and says so. */
  void write(CsvTable table, OutFile to, Terminal terminal) {
    table.write(to, spreadsheet ? CsvTable.Dialect.SPREADSHEET : CsvTable.Dialect.PLAIN);
    terminal.written(to.path());
  }
}
