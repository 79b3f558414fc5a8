package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.halflight.extratest.Bounce;
import org.halflight.extratest.ExtraTests;
import org.halflight.rig.practice.PracticeFiring;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.BladeLaw;
import org.halflight.shuttermodel.BladeStroke;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.ReleaseTiming;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.SpeedBehaviour;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bounce of a model shutter through practice rig and session; the truth is that of the model. */
class PracticeBounceTest {
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");
  private static final int FIRINGS = 5;
  private static final int MOST_STEPS = 200_000;

  @TempDir private Path folder;

  @Test
  void theBounceThatWasPutInComesOut() {
    Map<MarkedSpeed, SpeedBehaviour> speeds = new LinkedHashMap<>();
    speeds.put(TOP, SpeedBehaviour.of(0, 0.02));
    // A half sine of 0.4 ms with 9 % of the light of 1/500: its top is at 0.69 of full light.
    LeafShutter shutter =
        new LeafShutter(
            "invented, springs back",
            new BladeStroke(BladeLaw.FIVE_BLADES_CONSTANT, 0.6, BladeLaw.FIVE_BLADES_CONSTANT, 0.6),
            speeds,
            new org.halflight.shuttermodel.Bounce(0.09, 4, 0.4),
            ReleaseTiming.INVENTED,
            20);
    PracticeRig rig = PracticeRig.unpaced(shutter, SensorSet.INVENTED, 20);
    long[] nanos = {0};
    Workbench workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("a.session")),
            () -> nanos[0] += 1000,
            Marks.begins(
                "test", OffsetDateTime.parse("2026-11-25T10:00:00Z"), Optional.of("bounce")));
    List<Double> truths = new ArrayList<>();
    try (BenchDriver driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now))) {
      Session session = workbench.fold().session();
      until(driver, rig, () -> workbench.fold().greeting().isPresent());
      LightSetting setting = driver.light().set();
      until(driver, rig, () -> setting.step() == LightSetting.Step.OPEN_THE_SHUTTER);
      rig.holdOpen(true);
      driver.light().shutterIsOpen();
      until(driver, rig, () -> setting.step() == LightSetting.Step.DONE);
      rig.holdOpen(false);
      until(driver, rig, session::isQuiet);
      driver.handle(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.AS_LEFT, "leaf", List.of(TOP), Reference.EXACT, FIRINGS)));
      rig.chooseSpeed(TOP);
      for (int i = 0; i < FIRINGS; i++) {
        int before = session.results().size();
        PracticeFiring fired = rig.fire().orElseThrow();
        ModelFiring.Timed model = (ModelFiring.Timed) fired.model();
        truths.add(model.bounceShare());
        until(driver, rig, () -> session.results().size() > before);
      }
      Bounce bounce =
          (Bounce) ExtraTests.of(session.results(), session.readings(), session.runs()).get(0);
      Bounce.AtSpeed top = bounce.worst().orElseThrow();
      double truth = truths.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
      System.out.printf(
          Locale.ROOT,
          "simulated: bounce of %.2f %% found as %.2f %%, %.3f stop for %.3f%n",
          100 * truth,
          100 * top.lateShare(),
          top.overExposureStops(),
          Bounce.overExposureStops(truth));
      // It rises above the low level soon enough for the light curve to hold all of it. Two levels
      // alone would see 0.160 ms of 0.176 ms: W at 0.2113 is 0.4 ms (1 - 2/pi asin(0.2113/0.69)).
      assertThat(top.curves()).isEqualTo(top.late().n());
      assertThat(top.lateShare()).isCloseTo(truth, within(0.03 * truth));
      assertThat(top.overExposureStops()).isCloseTo(Bounce.overExposureStops(truth), within(0.02));
    }
  }

  private static void until(BenchDriver driver, PracticeRig rig, BooleanSupplier condition) {
    for (int i = 0; i < MOST_STEPS && !condition.getAsBoolean(); i++) {
      if (driver.step().isEmpty()) {
        rig.rest(0.3);
      }
    }
    assertThat(condition.getAsBoolean()).isTrue();
  }
}
