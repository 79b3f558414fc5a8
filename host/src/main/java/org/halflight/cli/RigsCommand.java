package org.halflight.cli;

import java.util.concurrent.Callable;
import org.halflight.link.Ports;
import org.halflight.rig.RigFinder;
import org.halflight.rig.RigSearch;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says which rigs are there. */
@Command(
    name = "rigs",
    description = "Says which rigs are plugged in. Opening a port restarts many boards.")
final class RigsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Mixin private RigOptions rig = new RigOptions();

  RigsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    Ports ports = surroundings.ports().apply(rig.ports());
    terminal.say(Words.say("rigs.looking"));
    RigSearch search = new RigFinder(ports, surroundings.nanos()).search(rig.wish(), () -> true);
    search.rig().ifPresent(found -> found.link().close());
    if (search.outcomes().isEmpty()) {
      terminal.say(search.sentence());
    }
    search.outcomes().forEach(outcome -> terminal.say(outcome.sentence()));
    return search.rig().isPresent() ? 0 : 1;
  }
}
