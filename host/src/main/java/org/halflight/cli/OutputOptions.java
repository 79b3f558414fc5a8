package org.halflight.cli;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How the files that a command writes come into place: the same for every command. */
final class OutputOptions {
  @Option(names = "--force")
  private boolean force;

  /** The files of a command that reads these. */
  OutFiles files(Collection<Path> inputs) {
    return OutFiles.of(force, inputs);
  }

  /** A file that was asked for; empty where none was. */
  static Optional<OutFile> asked(OutFiles files, @Nullable Path named, FileKind kind) {
    return Optional.ofNullable(named).map(path -> files.file(path, kind));
  }

  /** A table that was asked for; empty where none was. */
  static Optional<OutFile> askedTable(OutFiles files, @Nullable Path named, List<String> headings) {
    return Optional.ofNullable(named).map(path -> files.table(path, headings));
  }

  boolean force() {
    return force;
  }
}
