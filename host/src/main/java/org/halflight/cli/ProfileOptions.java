package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.ProfileSource;
import org.halflight.bench.ProfiledEvents;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.Words;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which rig profile a command measures with. */
final class ProfileOptions {
  @Option(names = "--profile", paramLabel = "FILE")
  private @Nullable Path file;

  @Option(names = "--no-profile")
  private boolean none;

  @Option(names = "--profile-days", paramLabel = "DAYS", defaultValue = "90")
  private int days;

  /** What a session at the bench is told. */
  ProfileSource live(Surroundings surroundings) {
    check();
    if (none) {
      return (serial, on) -> Optional.of(new SessionInput.ProfileLeftOut());
    }
    return file == null ? shelf(surroundings) : chosen(file);
  }

  /** The events of a session file as they are to be replayed. */
  List<BenchEvent> replayed(List<BenchEvent> events, Surroundings surroundings) {
    check();
    if (none) {
      return ProfiledEvents.without(events);
    }
    return file == null
        ? ProfiledEvents.orElse(events, shelf(surroundings))
        : ProfiledEvents.with(events, chosen(file));
  }

  /** All that a command reads: these files, and the profile that was chosen. */
  List<Path> with(List<Path> read) {
    return file == null ? read : Stream.concat(read.stream(), Stream.of(file)).toList();
  }

  private void check() {
    if (none && file != null) {
      throw new Trouble(Words.say("profile.option.both"));
    }
    if (days < 1) {
      throw new Trouble(Words.say("profile.option.days", days));
    }
  }

  private ProfileSource shelf(Surroundings surroundings) {
    ProfileStore shelf = new ProfileStore(surroundings.folder());
    return (serial, on) -> shelf.inUse(serial, on, OptionalInt.of(days));
  }

  private ProfileSource chosen(Path from) {
    RigProfile profile = ProfileStore.read(from);
    return (serial, on) ->
        Optional.of(
            new SessionInput.ProfileInUse(
                profile, on.orElse(profile.date()), OptionalInt.of(days)));
  }
}
