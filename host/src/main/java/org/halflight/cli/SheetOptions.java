package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BiConsumer;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.report.Paper;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** On which paper a sheet is printed, and whether it may replace a file. */
final class SheetOptions {
  @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "a4")
  private String paper;

  @Mixin private OutputOptions output = new OutputOptions();

  /** Writes a sheet and says so. */
  void write(Surroundings surroundings, Path out, BiConsumer<Paper, OutFile> sheet) {
    Paper size = CliWords.constant(Paper.WORDS, paper, "--paper");
    sheet.accept(size, output.files(List.of()).file(out, FileKind.PAGE));
    surroundings.terminal().written(out);
  }
}
