package org.halflight.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.halflight.export.ComparisonTable;
import org.halflight.export.CsvTable;
import org.halflight.export.StatisticTable;
import org.halflight.files.OutFile;
import org.halflight.files.OutFiles;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.Source;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.Patterns;
import org.halflight.verdict.RunComparison;
import org.halflight.verdict.RunStatistics;
import org.halflight.verdict.SpeedStatistics;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.ComparisonWords;
import org.halflight.words.PatternWords;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.StatisticLine;
import org.halflight.words.StatisticWords;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Holds two runs against each other. */
@Command(name = "compare")
final class CompareCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION")
  private List<Path> sessions;

  @Option(names = "--with", paramLabel = "SESSION")
  private List<Path> with = List.of();

  @Option(names = "--before", paramLabel = "PHASE")
  private @Nullable String before;

  @Option(names = "--after", paramLabel = "PHASE")
  private @Nullable String after;

  @Option(names = "--details")
  private boolean details;

  @Option(names = "--table", paramLabel = "FILE")
  private @Nullable Path table;

  @Option(names = "--statistics", paramLabel = "FILE")
  private @Nullable Path statistics;

  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();
  @Mixin private OutputOptions output = new OutputOptions();
  @Mixin private TableOptions tables = new TableOptions();

  CompareCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    boolean other = !with.isEmpty();
    OutFiles files =
        output.files(profiles.with(Stream.concat(sessions.stream(), with.stream()).toList()));
    Optional<OutFile> tableFile =
        OutputOptions.askedTable(files, table, ComparisonTable.headings());
    Optional<OutFile> statisticFile =
        OutputOptions.askedTable(files, statistics, StatisticTable.headings());
    RunChoice first =
        RunChoice.of(
            sessions,
            before == null && !other ? Phase.WORDS.word(Phase.AS_FOUND) : before,
            "--before",
            false,
            reading());
    RunChoice second =
        RunChoice.of(
            other ? with : sessions,
            after == null && !other ? Phase.WORDS.word(Phase.AS_LEFT) : after,
            "--after",
            true,
            reading());
    RunComparison runs =
        RunComparison.of(first.run(), second.run(), first.conditions(), second.conditions());
    if (runs.speeds().isEmpty()) {
      throw new Trouble(Words.say("compare.none"));
    }
    List<FiringResult> firings = new ArrayList<>(first.firings());
    firings.addAll(second.firings());
    Source source = Source.of(firings);
    Terminal terminal = surroundings.terminal();
    terminal.say(lines(runs, firings));
    terminal.say(DecisionOptions.remarks(List.of(runs.before(), runs.after())));
    List<RunStatistics> both =
        List.of(RunStatistics.of(runs.before()), RunStatistics.of(runs.after()));
    if (details) {
      both.forEach(run -> terminal.say(details(run)));
    }
    tableFile.ifPresent(to -> write(ComparisonTable.of(source, runs), to));
    statisticFile.ifPresent(to -> write(StatisticTable.of(source, both), to));
    return 0;
  }

  private void write(CsvTable written, OutFile to) {
    tables.write(written, to, surroundings.terminal());
  }

  private RunChoice.Reading reading() {
    return new RunChoice.Reading(decision, profiles, surroundings);
  }

  /** A comparison for the terminal. */
  static List<String> lines(RunComparison runs, List<FiringResult> firings) {
    List<String> lines = new ArrayList<>();
    lines.add(
        Words.say(
            "compare.heading",
            Sentences.phase(runs.before().phase()),
            Sentences.phase(runs.after().phase())));
    firings.stream()
        .map(firing -> firing.key().rigSerial())
        .distinct()
        .forEach(serial -> lines.add(Sentences.source(serial)));
    lines.addAll(ProfileWords.standing(CalibrationStatus.of(firings)));
    lines.add("");
    for (var run : List.of(runs.before(), runs.after())) {
      lines.add(
          Words.say(
              "page.pattern",
              Sentences.phase(run.phase()),
              String.join(
                  " ",
                  PatternWords.of(
                      Patterns.of(run), run.speeds().stream().map(SpeedSummary::speed).toList()))));
    }
    lines.addAll(ComparisonWords.all(runs));
    return lines;
  }

  private static List<String> details(RunStatistics run) {
    List<String> lines = new ArrayList<>();
    lines.add("");
    lines.add(Words.say("compare.details", Sentences.phase(run.phase())));
    lines.addAll(StatisticWords.troubles(run));
    for (SpeedStatistics speed : run.speeds()) {
      lines.add("");
      lines.add(Words.say("compare.details.speed", speed.summary().speed()));
      TextTable statistics =
          new TextTable(
              Words.say("compare.details.statistic"),
              Words.say("compare.details.number"),
              Words.say("compare.details.firings"));
      List<StatisticLine> all = StatisticWords.lines(speed);
      all.forEach(line -> statistics.add(line.name(), line.number(), line.firings()));
      lines.addAll(statistics.lines());
      all.forEach(line -> lines.add(line.sentence()));
    }
    return lines;
  }
}
