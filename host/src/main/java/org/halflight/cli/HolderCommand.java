package org.halflight.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.halflight.report.HolderSheet;
import org.halflight.words.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A paper holder for the photodiode of the starter rig. */
@Command(name = "holder")
final class HolderCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--out", paramLabel = "FILE", defaultValue = "holder.pdf")
  private Path out;

  @Mixin private SheetOptions sheet = new SheetOptions();

  HolderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    sheet.write(surroundings, out, HolderSheet::write);
    surroundings.terminal().say(Words.say("holder.print"));
    surroundings.terminal().say(Words.say("holder.caution"));
    return 0;
  }
}
