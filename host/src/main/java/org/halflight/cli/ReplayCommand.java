package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.halflight.extratest.ExtraTests;
import org.halflight.session.FiringResult;
import org.halflight.verdict.RunSummary;
import org.halflight.words.CurtainWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Works session files out again. */
@Command(name = "replay")
final class ReplayCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(arity = "1..*", paramLabel = "SESSION")
  private List<Path> sessions;

  @Option(names = "--details")
  private boolean details;

  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();

  @Option(names = "--each")
  private boolean each;

  ReplayCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    List<FiringResult> firings = Sessions.firings(sessions, profiles, surroundings);
    Terminal terminal = surroundings.terminal();
    if (each) {
      firings.forEach(
          firing -> {
            terminal.say(Words.say("replay.each", firing.number(), Sentences.firing(firing)));
            firing.exposure().curtains().map(CurtainWords::firing).ifPresent(terminal::say);
          });
      terminal.say("");
    }
    List<RunSummary> runs = decision.summaries(firings, RunNotes.setups(sessions));
    terminal.say(ResultText.lines(firings, runs, DecisionOptions.remarks(runs)));
    terminal.say(
        ResultText.tried(
            ExtraTests.of(Sessions.evidence(sessions, firings), Sessions.runs(sessions))));
    terminal.say(CurtainText.lines(firings, RunNotes.setups(sessions)));
    terminal.say(ResultText.stages(firings, Sessions.runs(sessions)));
    if (details) {
      terminal.say(ResultText.budgets(runs));
    }
    terminal.say(Sessions.remarks(sessions));
    return 0;
  }
}
