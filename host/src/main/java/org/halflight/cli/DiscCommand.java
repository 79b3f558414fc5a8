package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.halflight.files.FileKind;
import org.halflight.report.DiscSheet;
import org.halflight.report.Paper;
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

  @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "a4")
  private String paper;

  @Mixin private OutputOptions output = new OutputOptions();

  DiscCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Paper size = CliWords.constant(Paper.WORDS, paper, "--paper");
    DiscSheet.write(size, output.files(List.of()).file(out, FileKind.PAGE));
    surroundings.terminal().written(out);
    surroundings.terminal().say(Words.say("disc.print"));
    surroundings.terminal().say(Words.say("disc.caution"));
    surroundings.terminal().say(Words.say("disc.next"));
    return 0;
  }
}
