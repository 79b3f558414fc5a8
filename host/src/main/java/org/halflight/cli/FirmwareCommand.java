package org.halflight.cli;

import java.util.Optional;
import org.halflight.upload.FirmwareImage;
import org.halflight.upload.FirmwareImages;
import org.halflight.upload.UploadStep;
import org.halflight.words.Words;
import org.halflight.workflow.FirmwareUpload;
import org.halflight.workflow.FirmwareWork;
import org.halflight.workflow.ShippedFirmware;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The firmware that this program brings, and putting it on a board. */
@Command(name = "firmware", synopsisSubcommandLabel = "COMMAND")
final class FirmwareCommand {
  private static final int DIGITS_SHOWN = 16;

  private final Surroundings surroundings;

  FirmwareCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Command(name = "list")
  int list() {
    for (FirmwareImage image : ShippedFirmware.images().all()) {
      surroundings
          .terminal()
          .say(
              Words.say(
                  "upload.image",
                  image.rig(),
                  image.version(),
                  image.size(),
                  image.checksum().substring(0, DIGITS_SHOWN)));
    }
    return 0;
  }

  @Command(name = "upload")
  int upload(
      @Parameters(paramLabel = "KIND", arity = "0..1") @Nullable String kind,
      @Option(names = "--rewired") boolean rewired,
      @Mixin RigOptions rig) {
    Terminal terminal = surroundings.terminal();
    FirmwareImages images = ShippedFirmware.images();
    FirmwareWork work =
        new FirmwareWork(
            surroundings.ports().apply(rig.ports()),
            surroundings.nanos(),
            () -> terminal.typed().filter("q"::equals).isEmpty(),
            images);
    terminal.say(Words.say("rigs.looking"));
    FirmwareWork.Target target = work.target(rig.wish(), Optional.ofNullable(kind), rewired);
    terminal.say(target.sentence());
    terminal.say(Words.say("upload.keep"));
    terminal.say(work.upload(target, new Steps(terminal)));
    return 0;
  }

  /** Says each step, and each quarter on the way. */
  private static final class Steps implements FirmwareUpload.Progress {
    private final Terminal terminal;
    private final Quarters quarters;
    private Optional<UploadStep> last = Optional.empty();

    Steps(Terminal terminal) {
      this.terminal = terminal;
      quarters = new Quarters(terminal);
    }

    @Override
    public void at(UploadStep step, double fraction) {
      if (!last.equals(Optional.of(step))) {
        last = Optional.of(step);
        terminal.say(Words.of("upload.step", step));
      }
      quarters.accept(fraction);
    }
  }
}
