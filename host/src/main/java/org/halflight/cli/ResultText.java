package org.halflight.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.halflight.extratest.ExtraTest;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.RunSetup;
import org.halflight.verdict.AssemblyStages;
import org.halflight.verdict.CalibrationStatus;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.verdict.StageRuns;
import org.halflight.words.BudgetWords;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Numbers;
import org.halflight.words.ProfileWords;
import org.halflight.words.ReboundWords;
import org.halflight.words.Sentences;
import org.halflight.words.StageWords;
import org.halflight.words.Words;

/** The results of a session for the terminal: a table, then each speed in sentences. */
final class ResultText {
  private ResultText() {}

  static List<String> lines(
      List<FiringResult> firings, List<RunSummary> runs, List<String> judged) {
    List<String> lines = new ArrayList<>();
    if (runs.isEmpty()) {
      if (firings.stream().noneMatch(f -> f.run() > 0)) {
        lines.add(Words.say(firings.isEmpty() ? "results.none" : "results.noRun"));
      }
      firings.forEach(firing -> lines.add(Sentences.firing(firing)));
      return lines;
    }
    for (RunSummary run : runs) {
      lines.addAll(run(firings, run));
      lines.add("");
    }
    lines.addAll(judged);
    return lines;
  }

  /** What was tried beside the marked speeds; nothing where nothing was. */
  static List<String> tried(List<ExtraTest> tried) {
    List<String> lines = new ArrayList<>();
    if (!tried.isEmpty()) {
      lines.add("");
      lines.add(Words.say("results.tried"));
      tried.forEach(each -> lines.add(ExtraTestWords.inOneLine(each)));
    }
    return lines;
  }

  /** The stages of assembly; nothing where there are none. */
  static List<String> stages(List<FiringResult> firings, List<RunSetup> runs) {
    List<String> lines = new ArrayList<>();
    for (AssemblyStages assembly : StageRuns.of(firings, runs)) {
      lines.add("");
      lines.add(Words.say("results.stages"));
      lines.addAll(StageWords.lines(assembly));
    }
    return lines;
  }

  /** The uncertainty budget of each speed. */
  static List<String> budgets(List<RunSummary> runs) {
    List<String> lines = new ArrayList<>();
    for (RunSummary run : runs) {
      for (SpeedSummary speed : run.speeds()) {
        if (speed.budget().isPresent()) {
          lines.add("");
          lines.add(
              Words.say(
                  "budget.heading", Sentences.phase(run.phase()), Numbers.speed(speed.speed())));
          TextTable table = new TextTable(BudgetWords.headings().toArray(String[]::new));
          BudgetWords.rows(speed.budget().get())
              .forEach(row -> table.add(row.toArray(String[]::new)));
          lines.addAll(table.lines());
          lines.addAll(BudgetWords.sum(speed));
        }
      }
    }
    lines.add("");
    lines.add(Words.say("budget.optics"));
    return lines;
  }

  private static List<String> run(List<FiringResult> firings, RunSummary run) {
    List<String> lines = new ArrayList<>();
    List<FiringResult> own =
        firings.stream().filter(f -> f.phase().filter(run.phase()::equals).isPresent()).toList();
    lines.add(
        Words.say(
            "results.heading",
            Sentences.phase(run.phase()),
            Sentences.reference(run.speeds().get(0).reference())));
    own.stream()
        .map(f -> f.key().rigSerial())
        .distinct()
        .forEach(serial -> lines.add(Sentences.source(serial)));
    lines.addAll(ProfileWords.standing(CalibrationStatus.of(own)));
    lines.add("");
    TextTable table =
        new TextTable(
            Words.say("table.marked"),
            Words.say("table.shouldBe"),
            Words.say("table.mean"),
            Words.say("table.error"),
            Words.say("table.interval"),
            Words.say("table.scatter"),
            Words.say("table.firings"),
            Words.say("table.decidedBy"));
    run.speeds().forEach(speed -> row(table, speed));
    lines.addAll(table.lines());
    lines.add("");
    if (own.stream().anyMatch(f -> f.levels().isEmpty() && f.isGood())) {
      lines.add(Words.say("light.unknown"));
    }
    run.speeds().forEach(speed -> lines.add(String.join(" ", Sentences.speed(speed))));
    lines.addAll(ReboundWords.ofRun(own));
    own.stream()
        .filter(f -> f.untimedTest().isPresent())
        .filter(f -> !f.isOfTheLinkage() || isFault(f.outcome()))
        .forEach(f -> lines.add(Sentences.firing(f)));
    long leaks = own.stream().filter(f -> f.notes().leak()).count();
    if (leaks > 0) {
      lines.add(Words.count("results.leaks", (int) leaks, leaks));
    }
    long doubtful = own.stream().filter(f -> f.notes().lightDoubtful() && f.isGood()).count();
    if (doubtful > 0) {
      lines.add(Words.count("results.lightDoubtful", (int) doubtful, doubtful));
    }
    return lines;
  }

  private static void row(TextTable table, SpeedSummary speed) {
    OptionalDouble mean = speed.meanSeconds();
    table.add(
        speed.speed().label(),
        Numbers.time(speed.referenceSeconds()),
        mean.isPresent() ? Numbers.time(mean.getAsDouble()) : Words.say("table.nothing"),
        speed.meanStops().isPresent()
            ? Numbers.signedStops(speed.meanStops().getAsDouble())
            : Words.say("table.nothing"),
        speed
            .expandedIntervalStops()
            .map(
                interval ->
                    Words.say(
                        "table.fromTo",
                        Numbers.signedStops(interval.low()),
                        Numbers.signedStops(interval.high())))
            .orElse(Words.say("table.nothing")),
        speed.scatterStops().isPresent()
            ? Numbers.plainStops(speed.scatterStops().getAsDouble())
            : Words.say("table.nothing"),
        Words.say("table.countOf", speed.errors().n(), speed.tries()),
        speed.timingBasis().kinds().isEmpty()
            ? Words.say("table.nothing")
            : Sentences.decidedBy(speed));
  }

  /** Of the linkage test the presses are told, and only what the shutter did wrong besides. */
  private static boolean isFault(Outcome outcome) {
    return outcome == Outcome.STUCK_OPEN || outcome == Outcome.DOUBLE;
  }
}
