package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.LightLeak;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Looks for light through shut blades. */
@Command(
    name = "leak",
    description =
        "Leak test: reads the light through the shut blades, not cocked and cocked, against the"
            + " covered lamp. Kept in the session file.")
final class LeakCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(paramLabel = "SESSION", description = "The session file; made if it is not there.")
  private Path session;

  @Option(
      names = "--practice",
      description = "On the practice rig, with an invented leak, instead of a rig.")
  private boolean practice;

  @Mixin private RigOptions rig = new RigOptions();

  LeakCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    int done = new LightTests(surroundings, session, rig, practice).run(LightPlan.leak());
    List<Path> files = List.of(session);
    List<ExtraTest> leaks =
        ExtraTests.of(List.of(), Sessions.readings(files), List.of()).stream()
            .filter(LightLeak.class::isInstance)
            .toList();
    Terminal terminal = surroundings.terminal();
    terminal.say("");
    if (leaks.isEmpty()) {
      terminal.say(Words.say("leak.none"));
      return 1;
    }
    terminal.say(ExtraTestWords.lines(leaks.get(leaks.size() - 1)));
    terminal.say(ExtraTestWords.source(List.of(), Sessions.readings(files)));
    return done;
  }
}
