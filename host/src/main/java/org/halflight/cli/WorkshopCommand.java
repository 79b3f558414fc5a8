package org.halflight.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.halflight.files.SettingsFile;
import org.halflight.photo.PhotoInbox;
import org.halflight.report.Logo;
import org.halflight.report.Paper;
import org.halflight.report.Workshop;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Says who pages are from, and changes it. */
@Command(name = "workshop")
final class WorkshopCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--name", paramLabel = "NAME")
  private @Nullable String name;

  @Option(names = "--repairer", paramLabel = "NAME")
  private @Nullable String repairer;

  @Option(names = "--logo", paramLabel = "FILE")
  private @Nullable String logo;

  @Option(names = "--paper", paramLabel = "SIZE")
  private @Nullable String paper;

  @Option(names = "--inbox", paramLabel = "FOLDER")
  private @Nullable String inbox;

  WorkshopCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Workshop before = surroundings.workshop();
    Workshop now =
        new Workshop(
            name == null ? before.name() : name.strip(),
            repairer == null ? before.repairer() : repairer.strip(),
            logo == null ? before.logo() : logo(logo),
            paper == null ? before.paper() : paper(paper));
    String pictures = PhotoInbox.chosen(SettingsFile.read(surroundings.folder()));
    String arrive = inbox == null ? pictures : PhotoInbox.checked(inbox);
    if (!now.equals(before) || !arrive.equals(pictures)) {
      try {
        SettingsFile.change(
            surroundings.folder(),
            kept -> {
              now.keepIn(kept);
              PhotoInbox.choose(kept, arrive);
            });
      } catch (IOException notKept) {
        throw new Trouble(Words.say("workshop.notKept", surroundings.folder()));
      }
    }
    say("workshop.name", now.name());
    say("workshop.repairer", now.repairer());
    say("workshop.logo", now.logo());
    say("workshop.paper", now.paper().map(Paper.WORDS::word).orElse(""));
    say("workshop.inbox", arrive);
    return 0;
  }

  /** By its whole path: the next command may be given in another folder. */
  private static String logo(String typed) {
    if (typed.isBlank()) {
      return "";
    }
    Logo.read(typed);
    return Path.of(typed).toAbsolutePath().normalize().toString();
  }

  private static Optional<Paper> paper(String typed) {
    return typed.isBlank()
        ? Optional.empty()
        : Optional.of(CliWords.constant(Paper.WORDS, typed, "--paper"));
  }

  private void say(String key, String value) {
    surroundings
        .terminal()
        .say(Words.say(key, value.isEmpty() ? Words.say("workshop.none") : value));
  }
}
