package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigWork;
import org.halflight.files.FileKind;
import org.halflight.files.OutFiles;
import org.halflight.profile.ClockRate;
import org.halflight.profile.RigProfile;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On the practice rig; all figures are invented and simulated. */
class RigUpkeepTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 3, 9);

  @TempDir private Path folder;

  @Test
  void aRigIsCalibratedCheckedAndItsProfilePassedOn() {
    RigUpkeep upkeep = new RigUpkeep(folder);
    List<RigCalibration.Stage> stages = new ArrayList<>();
    RigProfile profile;
    try (RigWork work = rig()) {
      assertThatThrownBy(() -> upkeep.newest(work.rig().serial()))
          .isInstanceOf(Trouble.class)
          .hasMessageContaining("Calibrate it first");
      RigCalibration.Calibrated done =
          RigUpkeep.calibrate(work, 0, 29, TODAY, stages::add, part -> {});
      profile = done.profile();
      assertThat(stages).containsExactly(RigCalibration.Stage.values());
      assertThat(CalibrationSentences.lines(done, 0))
          .anyMatch(line -> line.startsWith("Long pulses"))
          .anyMatch(line -> line.startsWith("Ramped pulses"))
          .noneMatch(line -> line.startsWith("The clock was left out"));
      assertThat(CalibrationSentences.clockMissing(done, 60).orElseThrow())
          .startsWith("The clock was left out");
      assertThat(RigUpkeep.check(work, profile).inControl()).isTrue();
    }
    assertThat(upkeep.keep(profile)).isRegularFile();
    assertThat(upkeep.newest("PRACTICE")).isEqualTo(profile);

    ClockRate rate = new ClockRate(12, 0.1, 50, ClockRate.Source.PULSE_PER_SECOND);
    assertThat(upkeep.keepClock("PRACTICE", rate)).contains("PRACTICE");
    assertThat(upkeep.newest("PRACTICE")).isEqualTo(profile.withClock(rate));

    Path file = folder.resolve("given.profile");
    assertThat(RigUpkeep.write(profile, OutFiles.neverReplacing().free(file, FileKind.PROFILE)))
        .contains("given.profile");
    List<RigProfile> used = new ArrayList<>();
    assertThat(new RigUpkeep(folder.resolve("elsewhere")).importProfile(file, used::add))
        .contains("elsewhere");
    assertThat(used).containsExactly(profile);
  }

  @Test
  void whatThePersonStopsIsRefused() {
    try (RigWork work = rig()) {
      work.meanwhile(work::stop);
      assertThatThrownBy(() -> RigUpkeep.calibrate(work, 0, 29, TODAY, stage -> {}, part -> {}))
          .isInstanceOf(RigUpkeep.Refused.class)
          .hasMessageContaining("You ended it");
    }
  }

  private static RigWork rig() {
    RigWork work =
        new RigWork(
            new PumpFeed(
                PracticeRig.unpaced(
                    InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3),
                () -> 0));
    while (work.greeting().isEmpty()) {
      work.step();
    }
    return work;
  }
}
