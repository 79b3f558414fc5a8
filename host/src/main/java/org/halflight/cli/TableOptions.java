package org.halflight.cli;

import org.halflight.export.CsvTable;
import picocli.CommandLine.Option;

/** For whom tables are written. */
final class TableOptions {
  @Option(
      names = "--spreadsheet")
  private boolean spreadsheet;

  CsvTable.Dialect dialect() {
    return spreadsheet ? CsvTable.Dialect.SPREADSHEET : CsvTable.Dialect.PLAIN;
  }
}
