package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.halflight.exposure.LevelPair;
import org.halflight.rig.RigSelector;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rig works for itself in the middle of a session. Figures are invented and simulated. */
class ExclusiveRigTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 3, 9);
  private static final CalibrationPlan SHORT =
      new CalibrationPlan(
          List.of(LevelPair.GAUSS, new LevelPair(0.12, 0.65)), List.of(100e-6, 2e-3), 5, 0, true);
  private static final int PATIENCE = 20_000;

  private final PracticePorts ports =
      new PracticePorts(
          PracticeRig.unpaced(
              InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3));
  private Path file;
  private BenchDriver driver;
  private boolean open = true;

  @BeforeEach
  void begin(@TempDir Path folder) {
    file = folder.resolve("lent.session");
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(file),
            System::nanoTime,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    driver = new BenchDriver(workbench, new LiveFeed(ports, RigSelector.any(), workbench::now));
    until(() -> workbench.fold().greeting().isPresent());
  }

  @AfterEach
  void end() {
    if (open) {
      driver.close();
    }
  }

  @Test
  void whatTheRigDoesForItselfIsNoFiringAndTheSessionGoesOn() {
    fire();
    try (RigWork work = driver.lend(() -> {}, happening -> {})) {
      RigCalibration.Calibrated done =
          (RigCalibration.Calibrated) new RigCalibration(work, SHORT, 29, s -> {}).run(TODAY);
      assertThat(new RigCheckRun(work).run(done.profile())).isInstanceOf(RigCheckRun.Checked.class);
    }
    assertThat(results()).hasSize(1);
    fire();
    assertThat(results()).hasSize(2).allMatch(firing -> firing.outcome() == Outcome.TIMED);
    // Every line is kept, and a replay finds the same.
    List<FiringResult> live = results();
    driver.close();
    open = false;
    assertThat(SessionReducer.replay(SessionFile.read(file).events()).session().results())
        .isEqualTo(live);
  }

  @Test
  void itCanBeStoppedAtAnyStepAndTheRigComesBack() {
    AtomicInteger steps = new AtomicInteger();
    AtomicReference<RigWork> lent = new AtomicReference<>();
    try (RigWork work =
        driver.lend(
            () -> {
              if (steps.incrementAndGet() == 200) {
                lent.get().stop();
              }
            },
            happening -> {})) {
      lent.set(work);
      RigCalibration.Outcome outcome = new RigCalibration(work, SHORT, 29, s -> {}).run(TODAY);
      assertThat(((RigCalibration.Refused) outcome).refusal())
          .isInstanceOf(CalibrationRefusal.Stopped.class);
    }
    assertThat(results()).isEmpty();
    fire();
    assertThat(results()).hasSize(1).allMatch(firing -> firing.outcome() == Outcome.TIMED);
  }

  private List<FiringResult> results() {
    return driver.workbench().fold().session().results();
  }

  private void fire() {
    int before = results().size();
    ports.onBench(
        rig -> {
          rig.fire(PracticeMishap.NONE);
          rig.rest(1);
        });
    until(() -> results().size() > before);
  }

  private void until(BooleanSupplier holds) {
    for (int i = 0; i < PATIENCE && !holds.getAsBoolean(); i++) {
      if (driver.step().isEmpty()) {
        ports.onBench(rig -> rig.rest(0.3));
      }
    }
    assertThat(holds.getAsBoolean()).as("waited in vain").isTrue();
  }
}
