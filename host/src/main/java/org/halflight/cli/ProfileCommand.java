package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import org.halflight.files.FileKind;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.trouble.Trouble;
import org.halflight.words.ProfileWords;
import org.halflight.words.Words;
import org.halflight.workflow.RigUpkeep;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows rig profiles and passes them on. */
@Command(name = "profile", synopsisSubcommandLabel = "COMMAND")
final class ProfileCommand {
  private final Surroundings surroundings;

  ProfileCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Command(name = "show")
  int show(@Parameters(paramLabel = "SERIAL|FILE") String which) {
    RigProfile profile =
        which.endsWith(".profile") ? ProfileStore.read(Path.of(which)) : newest(which);
    surroundings.terminal().say(ProfileWords.lines(profile));
    return 0;
  }

  @Command(name = "export")
  int export(
      @Parameters(paramLabel = "SERIAL") String serial,
      @Parameters(paramLabel = "FILE") Path to,
      @Mixin OutputOptions output) {
    surroundings
        .terminal()
        .say(RigUpkeep.write(newest(serial), output.files(List.of()).file(to, FileKind.PROFILE)));
    return 0;
  }

  @Command(name = "import")
  int importProfile(@Parameters(paramLabel = "FILE") Path from) {
    surroundings
        .terminal()
        .say(new RigUpkeep(surroundings.folder()).importProfile(from, profile -> {}));
    return 0;
  }

  private RigProfile newest(String serial) {
    return new ProfileStore(surroundings.folder())
        .newest(serial)
        .orElseThrow(() -> new Trouble(Words.say("profile.none", serial)));
  }
}
