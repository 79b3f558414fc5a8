package org.halflight.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.speeds.Tolerances;
import org.halflight.trouble.Trouble;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Words;
import picocli.CommandLine.Option;

/** What results are held against. What is not given is as the run was set up. */
final class DecisionOptions {
  @Option(
      names = "--tolerance",
      paramLabel = "STOPS",
      description =
          "Tolerance in stops: 0.33 or 1/3 for every speed, 10%% of the time, or 1/500=0.5,1/60=1/4"
              + " for some. Default: as the run has it, else a third of a stop, half a stop at the"
              + " top speed (trade custom).")
  private String tolerance;

  @Option(
      names = "--until-decided",
      description =
          "Decide as for firing until it is decided: wider bounds, so that looking often does not"
              + " raise the risk.")
  private boolean untilDecided;

  @Option(
      names = "--about",
      paramLabel = "WHAT",
      description =
          "What the verdict is about: mean-of-setting (the usual exposure of each setting, its median)"
              + " or one-exposure. Default: as the run has it, else the usual exposure.")
  private String about;

  /** What is aimed at, where something else was kept with the run. */
  AcceptanceCriteria criteria(AcceptanceCriteria kept) {
    return new AcceptanceCriteria(
        tolerance == null
            ? kept.tolerances()
            : Tolerances.find(tolerance)
                .orElseThrow(() -> new Trouble(Words.say("tolerance.bad", tolerance))),
        about == null ? kept.measurand() : CliWords.constant(Measurand.WORDS, about, "--about"),
        untilDecided || kept.untilDecided(),
        kept.stops(),
        kept.linkage(),
        kept.flashContact());
  }

  /**
   * The firings summed up phase by phase, each speed against its tolerance.
   *
   * @param setups of the runs that they are of, in order
   */
  List<RunSummary> summaries(List<FiringResult> firings, List<RunSetup> setups) {
    List<RunSummary> runs = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      Optional<RunSetup> setup =
          setups.stream().filter(s -> s.phase() == phase).reduce((first, second) -> second);
      // Firings have a phase from their run on, so where there is none there is no firing.
      if (setup.isPresent()) {
        RunSetup asked = setup.get().withCriteria(criteria(setup.get().criteria()));
        runs.addAll(
            RunSummary.of(
                firings.stream().filter(f -> f.phase().equals(Optional.of(phase))).toList(),
                asked::tolerance,
                DecisionBasis.of(asked, RigKnowledge.UNCALIBRATED)));
      }
    }
    return runs;
  }

  /** What the verdicts of some runs rest on. */
  static List<String> remarks(List<RunSummary> runs) {
    List<SpeedSummary> speeds = runs.stream().flatMap(run -> run.speeds().stream()).toList();
    boolean usual = runs.stream().allMatch(RunSummary::holdsTradeCustom);
    List<String> remarks = new ArrayList<>();
    remarks.add(Words.say(usual ? "tolerance.custom" : "tolerance.own"));
    for (Measurand measurand : Measurand.values()) {
      if (speeds.stream().anyMatch(speed -> speed.judging().measurand() == measurand)) {
        remarks.add(Words.say("tolerance.about." + Measurand.WORDS.word(measurand)));
      }
    }
    for (DecisionRule rule : DecisionRule.values()) {
      if (speeds.stream().anyMatch(speed -> speed.judging().rule() == rule)) {
        remarks.add(Words.say("tolerance.rule." + DecisionRule.WORDS.word(rule)));
      }
    }
    if (speeds.stream().anyMatch(speed -> speed.oddOnes().isPresent())) {
      remarks.add(Words.say("odd.explained"));
    }
    return remarks;
  }
}
