package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.halflight.fixtures.Seeds;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.profile.RigProfile;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.ProfileUse;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A profile from the shelf to the session file; the rig is the practice rig, all is invented. */
class ProfileAtTheBenchTest {
  private static final long SEED = Seeds.usually(11);
  private static final LocalDate DAY = LocalDate.of(2026, 3, 9);

  @TempDir private Path folder;

  private static RigProfile profile(String serial) {
    return InventedProfiles.bare(
        new ProfiledRig(serial, "full", "practice-1"), DAY, new LightRange(8, 700, 900));
  }

  private static ProfileSource source(RigProfile profile) {
    return (serial, on) ->
        Optional.of(
            new SessionInput.ProfileInUse(profile, on.orElse(profile.date()), OptionalInt.of(90)));
  }

  @Test
  void theRigThatGreetsBringsItsProfileAndTheFileKeepsIt() {
    Path file = folder.resolve("a.session");
    List<String> asked = new ArrayList<>();
    ProfileSource shelf =
        (serial, on) -> {
          asked.add(serial);
          return source(profile(serial)).forRig(serial, on);
        };
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), SEED), SensorSet.INVENTED, SEED);
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file), () -> 0, new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    try (BenchDriver driver =
        new BenchDriver(workbench, new PumpFeed(rig, () -> 0), shelf, DAY.plusDays(1))) {
      for (int i = 0; i < 100 && session(driver).profileUse().equals(ProfileUse.NONE); i++) {
        if (driver.step().isEmpty()) {
          rig.rest(0.3);
        }
      }
      assertThat(session(driver).profileUse().isCalibrated()).isTrue();
      assertThat(asked).containsExactly("PRACTICE");
    }
    List<BenchEvent> events = SessionFile.read(file).events();
    assertThat(SessionReducer.replay(events).session().profileUse().profile())
        .contains(profile("PRACTICE"));

    assertThat(ProfiledEvents.orElse(events, ProfileSource.NONE)).isEqualTo(events);
    List<BenchEvent> without = ProfiledEvents.without(events);
    assertThat(SessionReducer.replay(without).session().profileUse()).isEqualTo(ProfileUse.NONE);
    Session other =
        SessionReducer.replay(ProfiledEvents.with(events, source(profile("R-0002")))).session();
    assertThat(other.profileUse().profile()).isEmpty();
    assertThat(
            SessionReducer.replay(ProfiledEvents.orElse(without, source(profile("PRACTICE"))))
                .session()
                .profileUse())
        .isEqualTo(SessionReducer.replay(events).session().profileUse());
  }

  private static Session session(BenchDriver driver) {
    return driver.workbench().fold().session();
  }
}
