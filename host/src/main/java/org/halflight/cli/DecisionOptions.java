package org.halflight.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.RunSummary;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Words;
import org.halflight.workflow.RunForm;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What results are held against. What is not given is as the run was set up. */
@Command
final class DecisionOptions {
  /** The options that results may be judged by afterwards, whatever their run was set up with. */
  static final List<RunOption<?>> ITS =
      List.of(RunOption.TOLERANCE, RunOption.UNTIL_DECIDED, RunOption.ABOUT);

  private final OptionArguments options = new OptionArguments();

  @Spec(Spec.Target.MIXEE)
  void command(CommandSpec command) {
    options.addTo(command, ITS);
  }

  /** What results are judged by, where something else was kept with the run. */
  AcceptanceCriteria criteria(AcceptanceCriteria kept) {
    return RunForm.criteria(options.typed(), kept);
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
      if (speeds.stream().anyMatch(speed -> speed.decisionBasis().measurand() == measurand)) {
        remarks.add(Words.say("tolerance.about." + Measurand.WORDS.word(measurand)));
      }
    }
    for (DecisionRule rule : DecisionRule.values()) {
      if (speeds.stream().anyMatch(speed -> speed.decisionBasis().rule() == rule)) {
        remarks.add(Words.say("tolerance.rule." + DecisionRule.WORDS.word(rule)));
      }
    }
    if (speeds.stream().anyMatch(speed -> speed.oddOnes().isPresent())) {
      remarks.add(Words.say("odd.explained"));
    }
    return remarks;
  }
}
