package org.halflight.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LiveFeed;
import org.halflight.bench.RigFeed;
import org.halflight.link.Ports;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.PortOutcome;
import org.halflight.rig.RigCommand;
import org.halflight.rig.RigFinder;
import org.halflight.rig.RigMessage;
import org.halflight.rig.RigSearch;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.halflight.workflow.FirmwareWork;
import org.halflight.workflow.ShippedFirmware;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says which rigs are there. */
@Command(name = "rigs")
final class RigsCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--give", paramLabel = "SERIAL")
  private @Nullable String serial;

  @Mixin private RigOptions rig = new RigOptions();

  RigsCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    Ports ports = surroundings.ports().apply(rig.ports());
    if (serial != null) {
      return give(ports, serial);
    }
    terminal.say(Words.say("rigs.looking"));
    RigSearch search = new RigFinder(ports, surroundings.nanos()).search(rig.wish(), () -> true);
    search.rig().ifPresent(found -> found.link().close());
    if (search.outcomes().isEmpty()) {
      terminal.say(search.sentence());
    }
    search.outcomes().forEach(outcome -> terminal.say(outcome.sentence()));
    search
        .rig()
        .flatMap(found -> FirmwareWork.ageSentence(ShippedFirmware.images(), found.greeting()))
        .ifPresent(terminal::say);
    boolean any = search.outcomes().stream().anyMatch(o -> o.finding() == PortOutcome.Finding.RIG);
    return any ? 0 : 1;
  }

  private int give(Ports ports, String name) {
    RigCommand.SetSerial command;
    try {
      command = new RigCommand.SetSerial(name);
    } catch (IllegalArgumentException badName) {
      throw new Trouble(Words.say("rigs.badSerial", name), badName);
    }
    surroundings.terminal().say(Words.say("rigs.looking"));
    try (LiveFeed feed = new LiveFeed(ports, rig.wish(), surroundings.nanos())) {
      boolean sent = false;
      while (true) {
        Optional<RigFeed.Item> item = feed.next();
        if (surroundings.terminal().typed().filter("q"::equals).isPresent()) {
          return 1;
        }
        if (item.isPresent() && item.get() instanceof RigFeed.Item.Changed changed) {
          surroundings.terminal().say(changed.change().sentence());
          if (changed.change().greeting().isPresent() && !sent) {
            sent = true;
            feed.send(command);
          }
        } else if (item.filter(RigFeed.Item.Unanswered.class::isInstance).isPresent()) {
          throw new Trouble(Words.say("rigs.noAnswer", name));
        } else if (sent && item.filter(its -> isDone(its, name)).isPresent()) {
          surroundings.terminal().say(Words.say("rigs.given", name));
          return 0;
        }
      }
    }
  }

  private static boolean isDone(RigFeed.Item item, String name) {
    return item instanceof RigFeed.Item.Line line
        && line.event() instanceof BenchEvent.Received received
        && received.rigLine().parsed() instanceof ParsedLine.Message parsed
        && parsed.message() instanceof RigMessage.Greeting greeting
        && greeting.serial().equals(name);
  }
}
