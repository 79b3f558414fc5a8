package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.export.CsvTable;
import org.halflight.export.ExtraTestTable;
import org.halflight.export.FiringTable;
import org.halflight.export.SpeedTable;
import org.halflight.export.StageTable;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTests;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.StageRuns;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes tables. */
@Command(name = "export")
final class ExportCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION")
  private List<Path> sessions;

  @Option(names = "--firings", paramLabel = "FILE")
  private @Nullable Path firingTable;

  @Option(names = "--speeds", paramLabel = "FILE")
  private @Nullable Path speedTable;

  @Option(names = "--extra-tests", paramLabel = "FILE")
  private @Nullable Path extraTestTable;

  @Option(names = "--stages", paramLabel = "FILE")
  private @Nullable Path stageTable;

  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();
  @Mixin private OutputOptions output = new OutputOptions();
  @Mixin private TableOptions tables = new TableOptions();

  ExportCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (firingTable == null && speedTable == null && extraTestTable == null && stageTable == null) {
      throw new Trouble(Words.say("export.nothing"));
    }
    OutFiles files = output.files(profiles.with(sessions));
    Optional<OutFile> firingFile =
        OutputOptions.askedTable(files, firingTable, FiringTable.headings());
    Optional<OutFile> speedFile =
        OutputOptions.askedTable(files, speedTable, SpeedTable.headings());
    Optional<OutFile> extraTestFile =
        OutputOptions.askedTable(files, extraTestTable, ExtraTestTable.headings());
    Optional<OutFile> stageFile =
        OutputOptions.askedTable(files, stageTable, StageTable.headings());
    List<FiringResult> firings = Sessions.firings(sessions, profiles, surroundings);
    firingFile.ifPresent(to -> write(FiringTable.of(firings), to));
    if (speedFile.isPresent()) {
      List<RunSummary> runs = decision.summaries(firings, RunNotes.setups(sessions));
      write(SpeedTable.of(Source.of(firings), runs), speedFile.get());
    }
    if (extraTestFile.isPresent()) {
      Evidence all = Sessions.evidence(sessions, firings);
      List<RunSetup> runs = Sessions.runs(sessions);
      write(
          ExtraTestTable.of(
              Sessions.camera(sessions),
              ExtraTests.source(firings, all.readings()),
              ExtraTests.of(all, runs),
              runs),
          extraTestFile.get());
    }
    stageFile.ifPresent(
        to ->
            write(
                StageTable.of(Source.of(firings), StageRuns.of(firings, Sessions.runs(sessions))),
                to));
    surroundings.terminal().say(Sessions.remarks(sessions));
    return 0;
  }

  private void write(CsvTable table, OutFile to) {
    tables.write(table, to, surroundings.terminal());
  }
}
