package org.halflight.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.halflight.bench.RigWork;
import org.halflight.bench.Workbench;
import org.halflight.calibration.RigCheck;
import org.halflight.chart.RigCheckChart;
import org.halflight.files.FileKind;
import org.halflight.files.OutFile;
import org.halflight.profile.ProfileFit;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.record.ProfileStore;
import org.halflight.session.SessionInput;
import org.halflight.trouble.Trouble;
import org.halflight.words.ProfileWords;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.halflight.workflow.CalibrationSentences;
import org.halflight.workflow.RigUpkeep;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The rig check before a session. */
@Command(name = "check")
final class CheckCommand implements Callable<Integer> {
  private final Surroundings surroundings;

  @Option(names = "--profile", paramLabel = "FILE")
  private @Nullable Path profile;

  @Option(names = "--most-days", paramLabel = "DAYS", defaultValue = "90")
  private int mostDays;

  @Option(names = "--session", paramLabel = "SESSION")
  private @Nullable Path session;

  @Option(names = "--chart", paramLabel = "FILE")
  private @Nullable Path chart;

  @Mixin private RigOptions rig = new RigOptions();
  @Mixin private OutputOptions output = new OutputOptions();

  CheckCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Terminal terminal = surroundings.terminal();
    Optional<OutFile> chartFile =
        OutputOptions.asked(output.files(inputs()), chart, FileKind.PICTURE);
    terminal.say(Words.say("check.begin"));
    try (RigWork work = rig.work(surroundings)) {
      if (!RigWait.forGreeting(work, terminal)) {
        return 1;
      }
      ProfiledRig here = work.rig();
      RigProfile against = against(here);
      terminal.say(Sentences.source(here.serial()));
      RigCheck check = RigUpkeep.check(work, against);
      terminal.say(CalibrationSentences.check(check));
      chartFile.ifPresent(to -> draw(check, Sentences.source(here.serial()), to));
      if (session != null) {
        try (Workbench workbench = Sessions.open(session, surroundings)) {
          workbench.handle(new SessionInput.RigChecked(here.serial(), check.inControl()));
        }
        terminal.say(Words.say("check.told", session));
      }
      return check.inControl() ? 0 : 1;
    }
  }

  private RigProfile against(ProfiledRig here) {
    RigProfile found =
        profile != null
            ? ProfileStore.read(profile)
            : new RigUpkeep(surroundings.folder()).newest(here.serial());
    Set<ProfileFit.Mismatch> mismatches =
        ProfileFit.of(
            found, here, surroundings.today(), OptionalDouble.empty(), OptionalInt.of(mostDays));
    for (ProfileFit.Mismatch mismatch : mismatches) {
      if (mismatch.forbidsUse()) {
        throw new Trouble(ProfileWords.mismatch(Optional.of(found), mismatch));
      }
      surroundings.terminal().say(ProfileWords.mismatch(Optional.of(found), mismatch));
    }
    return found;
  }

  private List<Path> inputs() {
    return Stream.of(profile, session).filter(Objects::nonNull).toList();
  }

  private void draw(RigCheck check, String source, OutFile to) {
    Pictures.write(new RigCheckChart(check, source), to, surroundings.terminal());
  }
}
