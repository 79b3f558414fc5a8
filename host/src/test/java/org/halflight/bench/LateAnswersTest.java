package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.halflight.exposure.LevelPair;
import org.halflight.rig.RigCommand;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.LightReading;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A late answer is late and not lost: on a slow computer nothing is refused, and nothing is taken
 * for settled before it is. The rig is the practice rig; all is invented.
 */
class LateAnswersTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 3, 9);
  private static final int STEPS_MOST = 20_000;

  /** All kinds of work that a calibration does, each once or twice. */
  private static final CalibrationPlan SHORT =
      new CalibrationPlan(
          List.of(LevelPair.GAUSS, new LevelPair(0.12, 0.65)), List.of(100e-6, 2e-3), 5, 6, true);

  private final PracticeRig rig =
      PracticeRig.unpaced(
          InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3);

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.7, 3, 30})
  void aCalibrationIsNotLost(double lateSeconds) {
    try (RigWork work = new RigWork(new LateFeed(rig, lateSeconds))) {
      until(
          () -> {
            work.step();
            return work.greeting().isPresent();
          });
      RigCalibration.Outcome outcome = new RigCalibration(work, SHORT, 29, s -> {}).run(TODAY);
      assertThat(outcome).isInstanceOf(RigCalibration.Calibrated.class);
      RigCalibration.Calibrated done = (RigCalibration.Calibrated) outcome;
      assertThat(done.profile().tripPoints()).hasSize(2);
      assertThat(new RigCheckRun(work).run(done.profile())).isInstanceOf(RigCheckRun.Checked.class);
    }
  }

  @Test
  void enterTwiceIsOnce() {
    try (BenchDriver driver = driver(0)) {
      LightSetting setting = driver.light().set();
      driver.light().shutterIsOpen();
      untilTheDarkIsRead(driver, setting);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      driver.light().shutterIsOpen();
      untilOver(driver, setting);
      assertThat(setting.refusal()).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.7, 3, 30})
  void aLightSettingIsNotLost(double lateSeconds) {
    try (BenchDriver driver = driver(lateSeconds)) {
      LightSetting setting = driver.light().set();
      untilTheDarkIsRead(driver, setting);
      assertThat(setting.step()).isEqualTo(LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      untilOver(driver, setting);
      assertThat(setting.refusal()).isEmpty();
      assertThat(setting.trips()).isPresent();
      LightProbe probe = driver.light().read(LightReading.What.STOP, "8", false);
      until(
          () -> {
            driver.step();
            return probe.step() != LightProbe.Step.READING;
          });
      assertThat(probe.step()).isEqualTo(LightProbe.Step.DONE);
    }
  }

  /** The work ends, and its last lines are still to come when the rig is given back. */
  @Test
  void aLentRigComesBackOnlyWhenItIsAtRest() {
    try (BenchDriver driver = driver(3)) {
      try (RigWork work = driver.lend(() -> {}, happening -> {})) {
        assertThat(new RigCalibration(work, SHORT, 29, s -> {}).run(TODAY))
            .isInstanceOf(RigCalibration.Calibrated.class);
        work.send(RigCommand.DriveReference.steady());
      }
      for (int i = 0; i < 200; i++) {
        driver.step();
      }
      assertThat(driver.workbench().fold().session().results()).isEmpty();
    }
  }

  @Test
  void aRigThatIsGoneRefusesTheCalibration() {
    LateFeed late = new LateFeed(rig, 0);
    RigFeed deaf =
        new RigFeed() {
          @Override
          public java.util.Optional<Item> next() {
            return late.next();
          }

          @Override
          public void send(RigCommand command) {
            // It never gets there.
          }

          @Override
          public long nowNanos() {
            return late.nowNanos();
          }

          @Override
          public void close() {
            late.close();
          }
        };
    try (RigWork work = new RigWork(deaf)) {
      until(
          () -> {
            work.step();
            return work.greeting().isPresent();
          });
      RigCalibration.Outcome outcome = new RigCalibration(work, SHORT, 29, s -> {}).run(TODAY);
      assertThat(((RigCalibration.Refused) outcome).refusal())
          .isInstanceOf(CalibrationRefusal.NoAnswer.class);
    }
  }

  private BenchDriver driver(double lateSeconds) {
    LateFeed feed = new LateFeed(rig, lateSeconds);
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("late.session")),
            feed::nowNanos,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    BenchDriver driver = new BenchDriver(workbench, feed);
    until(
        () -> {
          driver.step();
          return workbench.fold().greeting().isPresent();
        });
    return driver;
  }

  private void untilTheDarkIsRead(BenchDriver driver, LightSetting setting) {
    until(
        () -> {
          driver.step();
          return setting.step() != LightSetting.Step.DARK;
        });
  }

  private void untilOver(BenchDriver driver, LightSetting setting) {
    until(
        () -> {
          driver.step();
          return setting.step() == LightSetting.Step.DONE
              || setting.step() == LightSetting.Step.REFUSED;
        });
  }

  private static void until(BooleanSupplier holds) {
    for (int i = 0; i < STEPS_MOST; i++) {
      if (holds.getAsBoolean()) {
        return;
      }
    }
    throw new AssertionError("waited in vain");
  }
}
