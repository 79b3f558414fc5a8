package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.Workbench;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTests;
import org.halflight.session.FiringResult;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.TwoSpeeds;
import org.halflight.verdict.RunSummary;
import org.halflight.words.ClockWords;
import org.halflight.words.Words;
import org.halflight.workflow.CameraOperator;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a run. */
@Command(name = "run")
final class RunCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(paramLabel = "SESSION")
  private Path session;

  @Option(names = "--two", paramLabel = "SPEEDS")
  private @Nullable String two;

  @Option(names = "--light-again")
  private boolean lightAgain;

  @Mixin private RunOptions run = new RunOptions();
  @Mixin private DecisionOptions decision = new DecisionOptions();
  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private ProfileOptions profiles = new ProfileOptions();

  RunCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    RunSetup asked = two == null ? run.setup() : run.setupOfTwo(two);
    RunSetup setup = asked.withCriteria(decision.criteria(asked.criteria()));
    Workbench workbench = Sessions.open(session, surroundings);
    try (BenchDriver driver =
        new BenchDriver(
                workbench,
                rig.feed(surroundings, workbench::now),
                profiles.live(surroundings),
                surroundings.today())
            .watchesClock(surroundings.hostClock())) {
      BenchTerminal bench =
          new BenchTerminal(driver, surroundings.terminal(), CameraOperator.PERSON);
      if (!bench.waitForRig()) {
        return 1;
      }
      if (session(workbench).isRigCheckDue()) {
        surroundings.terminal().say(Words.say("check.due", session));
      }
      boolean unlit = session(workbench).light().isEmpty();
      if (unlit && setup.isQuick() && !lightAgain) {
        surroundings.terminal().say(Words.say("run.quick.light"));
      } else if ((lightAgain || unlit) && !bench.setLight()) {
        return 1;
      }
      bench.run(
          setup,
          Optional.ofNullable(two)
              .map(its -> TwoSpeeds.of(setup.order().get(0), setup.order().get(1))));
      Session state = session(workbench);
      List<FiringResult> firings = state.results();
      surroundings.terminal().say("");
      List<RunSummary> runs = decision.summaries(firings, state.runs());
      surroundings.terminal().say(ResultText.lines(firings, runs, DecisionOptions.remarks(runs)));
      surroundings
          .terminal()
          .say(ResultText.tried(ExtraTests.of(Evidence.of(state), state.runs())));
      surroundings.terminal().say(CurtainText.lines(firings, state.runs()));
      surroundings.terminal().say(ResultText.stages(firings, state.runs()));
      surroundings.terminal().say(clock(driver));
      return state.isRunDone() ? 0 : 1;
    }
  }

  /** Asked for anew each time: it is another one after an undo. */
  private static Session session(Workbench workbench) {
    return workbench.fold().session();
  }

  private static List<String> clock(BenchDriver driver) {
    List<String> lines =
        ClockWords.lines(
            driver.clock(),
            driver.hostClock(),
            driver.workbench().fold().greeting().map(rig -> rig.serial()).orElse(""),
            driver.workbench().fold().session().profileUse());
    return lines.isEmpty() ? lines : List.of("", String.join(" ", lines));
  }
}
