package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTests;
import org.halflight.report.PageAbout;
import org.halflight.report.PageFromRuns;
import org.halflight.report.PageRun;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.trouble.Trouble;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.StageRuns;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;

/**
 * One run picked out of session files.
 *
 * @param run what it came to
 * @param firings of the files
 * @param all what there is in the files beside them
 * @param runs what all runs of the files were set up for
 * @param notes what the files say about it
 */
record RunChoice(
    RunSummary run,
    List<FiringResult> firings,
    Evidence all,
    List<RunSetup> runs,
    Optional<RunNotes> notes) {
  /** How session files are read: held against what, and measured with what. */
  record Reading(DecisionOptions decision, ProfileOptions profiles, Surroundings surroundings) {}

  /** The run of a phase, where the files have one. */
  static Optional<RunChoice> of(List<Path> paths, Phase phase, Reading reading) {
    List<FiringResult> firings =
        Sessions.firings(paths, reading.profiles(), reading.surroundings());
    return reading.decision().summaries(firings, RunNotes.setups(paths)).stream()
        .filter(run -> run.phase() == phase)
        .findFirst()
        .map(
            run ->
                new RunChoice(
                    run,
                    firings,
                    Sessions.evidence(paths, firings),
                    Sessions.runs(paths),
                    RunNotes.last(RunNotes.of(paths), phase)));
  }

  /**
   * The run that is asked for, or the first or last there is.
   *
   * @param phase as it was typed; null where none was
   * @throws Trouble when the files have no such run
   */
  static RunChoice of(
      List<Path> paths, @Nullable String phase, String option, boolean first, Reading reading) {
    if (phase != null) {
      Phase asked = CliWords.constant(Phase.WORDS, phase, option);
      return of(paths, asked, reading)
          .orElseThrow(
              () -> new Trouble(Words.say("compare.noRun", names(paths), Phase.WORDS.word(asked))));
    }
    Optional<RunChoice> chosen = Optional.empty();
    for (Phase each : Phase.values()) {
      Optional<RunChoice> here = of(paths, each, reading);
      if (here.isPresent() && (chosen.isEmpty() || !first)) {
        chosen = here;
      }
    }
    return chosen.orElseThrow(() -> new Trouble(Words.say("compare.noRunAtAll")));
  }

  /**
   * The page of two runs.
   *
   * @param found the run before work
   * @param left the run after work; at least one of the two is there
   */
  static PageFromRuns page(PageAbout about, Optional<RunChoice> found, Optional<RunChoice> left) {
    RunChoice any = left.or(() -> found).orElseThrow();
    return new PageFromRuns(
        about,
        found.map(RunChoice::onPage),
        left.map(RunChoice::onPage),
        ExtraTests.of(any.all, any.runs).stream()
            .filter(tried -> !tried.phase().equals(Optional.of(Phase.ADJUSTING)))
            .toList(),
        StageRuns.of(any.firings, any.runs));
  }

  private PageRun onPage() {
    RunNotes its = notes.orElseThrow();
    return new PageRun(
        its.setup(),
        its.begunAt(),
        run,
        firings.stream().filter(f -> f.phase().equals(Optional.of(run.phase()))).toList());
  }

  /** What was noted about its set-up, by name. */
  Map<String, String> conditions() {
    return notes.map(each -> OptionWords.noted(each.setup().conditions())).orElse(Map.of());
  }

  private static String names(List<Path> paths) {
    return String.join(", ", paths.stream().map(Path::toString).toList());
  }
}
