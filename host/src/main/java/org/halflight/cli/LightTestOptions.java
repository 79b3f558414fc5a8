package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.LightPlan;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigFeed;
import org.halflight.bench.Workbench;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Session;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;
import org.halflight.workflow.CameraOperator;
import org.halflight.workflow.LightTestWork;
import org.halflight.workflow.PracticeOperator;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Where a light test is made and kept. */
final class LightTestOptions {
  private static final long SEED = 20;

  @Parameters(paramLabel = "SESSION")
  private Path session;

  @Option(names = "--practice")
  private boolean practice;

  @Mixin private RigOptions rig = new RigOptions();

  private String source = "";

  Path session() {
    return session;
  }

  /** Where the readings come from. */
  String source() {
    return source;
  }

  /**
   * Waits for the rig, sets the light where the session has none, and leads through the test.
   *
   * @return the test; empty when the person gave up, or too little was read
   */
  Optional<LightTestWork> lead(LightPlan plan, Surroundings surroundings) {
    Workbench workbench = Sessions.open(session, surroundings);
    Terminal terminal = surroundings.terminal();
    CameraOperator operator = CameraOperator.PERSON;
    RigFeed feed;
    if (practice) {
      PracticeRig model = PracticeOperator.unpacedRig(SEED, surroundings.date().get());
      operator = new PracticeOperator(model, SEED);
      feed = new PumpFeed(model, workbench::now);
      terminal.say(Words.say("lightTest.practice"));
    } else {
      feed = rig.feed(surroundings, workbench::now);
    }
    try (BenchDriver driver = new BenchDriver(workbench, feed)) {
      BenchTerminal bench = new BenchTerminal(driver, terminal, operator);
      if (!bench.waitForRig() || (session(workbench).light().isEmpty() && !bench.setLight())) {
        return Optional.empty();
      }
      Optional<LightTestWork> test = bench.test(plan).filter(its -> !its.result().isEmpty());
      source = ExtraTestWords.source(List.of(), session(workbench).readings());
      test.ifPresent(its -> terminal.say(source));
      return test;
    }
  }

  private static Session session(Workbench workbench) {
    return workbench.fold().session();
  }
}
