package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.bench.LightPlan;
import org.halflight.light.PanelTest;
import org.halflight.session.LightReading;
import org.halflight.session.PanelReadings;
import org.halflight.words.ExtraTestWords;
import org.halflight.words.PanelWords;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tests how evenly the panel of light fills the lens. */
@Command(
    name = "panel",
    description =
        "Panel test: reads full light with the panel in place and moved to either side by half the"
            + " width of the lens opening. Limits how long fast speeds may read; counts for the"
            + " firings of the session that follow. Kept in the session file.")
final class PanelCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Parameters(paramLabel = "SESSION", description = "The session file; made if it is not there.")
  private Path session;

  @Option(
      names = "--practice",
      description = "On the practice rig, with an invented panel, instead of a rig.")
  private boolean practice;

  @Mixin private RigOptions rig = new RigOptions();

  PanelCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    int done = new LightTests(surroundings, session, rig, practice).run(LightPlan.panel());
    List<LightReading> readings = Sessions.readings(List.of(session));
    Terminal terminal = surroundings.terminal();
    terminal.say("");
    Optional<PanelTest> test =
        readings.isEmpty()
            ? Optional.empty()
            : PanelReadings.last(readings, readings.get(readings.size() - 1).rigSerial());
    if (test.isEmpty()) {
      terminal.say(Words.say("panel.none"));
      return 1;
    }
    terminal.say(PanelWords.lines(test.get()));
    terminal.say(ExtraTestWords.source(List.of(), readings));
    return done;
  }
}
