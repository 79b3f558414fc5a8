package org.halflight.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.halflight.report.DiscSheet;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A slotted disc to print. */
@Command(name = "disc")
final class DiscCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--out", paramLabel = "FILE", defaultValue = "disc.pdf")
  private Path out;

  @Mixin private SheetOptions sheet = new SheetOptions();

  DiscCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    sheet.write(surroundings, out, DiscSheet::write);
    surroundings.terminal().say(Words.say("disc.print"));
    surroundings.terminal().say(Words.say("disc.caution"));
    surroundings.terminal().say(Words.say("disc.next"));
    return 0;
  }
}
