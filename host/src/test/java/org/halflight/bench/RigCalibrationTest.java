package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.halflight.calibration.SlopeTest;
import org.halflight.exposure.LevelPair;
import org.halflight.profile.ComparatorTrips;
import org.halflight.profile.FrontEndLag;
import org.halflight.profile.RigProfile;
import org.halflight.rig.RigSelector;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LevelComparators;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.halflight.workflow.CalibrationSentences;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Calibration and rig check on the practice rig; all figures are invented and simulated. */
class RigCalibrationTest {
  private static final LocalDate TODAY = LocalDate.of(2025, 3, 9);
  private static final CalibrationPlan SHORT =
      new CalibrationPlan(
          List.of(LevelPair.GAUSS, new LevelPair(0.12, 0.65)), List.of(100e-6, 2e-3), 5, 0, true);

  /** Hardly anything but the sweeps. */
  private static final CalibrationPlan SWEPT =
      new CalibrationPlan(List.of(LevelPair.GAUSS), List.of(100e-6), 5, 0, true);

  private static RigWork work(SensorSet sensors) {
    return work(sensors, 3);
  }

  private static RigWork work(SensorSet sensors, int seed) {
    PracticeRig rig =
        PracticeRig.unpaced(InventedShutters.soundLeaf(InventedShutters.dial(), 3), sensors, seed);
    RigWork work =
        new RigWork(new LiveFeed(new PracticePorts(rig), RigSelector.any(), System::nanoTime));
    while (work.greeting().isEmpty()) {
      work.step();
    }
    return work;
  }

  private static SensorSet sensors(double fullMillivolts) {
    FrontEnd end = new FrontEnd(40, fullMillivolts, 1, 0, Lamp.STEADY);
    return new SensorSet(end, end, end).with(LevelComparators.INVENTED);
  }

  @Test
  void theProfileFindsTheInventedFrontEndAndTheCheckAgrees() {
    try (RigWork work = work(SensorSet.INVENTED)) {
      List<RigCalibration.Stage> stages = new ArrayList<>();
      RigCalibration.Calibrated done =
          (RigCalibration.Calibrated) new RigCalibration(work, SHORT, 29, stages::add).run(TODAY);
      RigProfile profile = done.profile();

      assertThat(stages).containsExactly(RigCalibration.Stage.values());
      assertThat(profile.rig().serial()).isEqualTo("PRACTICE");
      assertThat(profile.date()).isEqualTo(TODAY);
      // SensorSet.INVENTED lags by 1 us.
      FrontEndLag lag = profile.lag().orElseThrow();
      System.out.printf("simulated: lag of 1 us found as %s%n", lag);
      assertThat(lag.seconds()).isCloseTo(1e-6, within(2 * lag.standardUncertaintySeconds()));
      assertThat(lag.standardUncertaintySeconds()).isLessThan(0.1e-6);
      System.out.printf("simulated: %s%n", done.fit().slope().orElseThrow());
      assertThat(done.fit().slope().orElseThrow().findable()).isLessThan(1e-4);
      // LevelComparators.INVENTED: offset 8 mV and hysteresis 12 mV of 5 V in 1024 counts.
      ComparatorTrips low = profile.tripPoints().get(Channel.CENTRE_LOW);
      assertThat(low.offsetCounts())
          .isCloseTo(8 / 5000.0 * 1024, within(2 * low.standardUncertaintyCounts()));
      assertThat(low.hysteresisCounts())
          .isCloseTo(12 / 5000.0 * 1024, within(4 * low.standardUncertaintyCounts()));
      assertThat(profile.shortestTrustworthySeconds().orElseThrow()).isEqualTo(100e-6);
      assertThat(Math.abs(done.rampedExcessSeconds().orElseThrow())).isLessThan(20e-6);
      assertThat(profile.clock()).as("left out").isEmpty();

      RigCheckRun.Checked checked = (RigCheckRun.Checked) new RigCheckRun(work).run(profile);
      assertThat(checked.check().points()).hasSize(RigCheckRun.PULSES);
      assertThat(checked.check().inControl())
          .as(CalibrationSentences.check(checked.check()).toString())
          .isTrue();
      assertThat(CalibrationSentences.check(checked.check()).get(0)).startsWith("In control");
    }
  }

  /**
   * Hysteresis and offset over many practice rigs: right on average, and within their expanded
   * uncertainty in 19 of 20. The hysteresis is a distance, which noise moves at both ends.
   */
  @Test
  @Tag("long")
  void tripPointsAreRightOnAverageAndWithinTheirUncertainty() {
    double hysteresis = 12 / 5000.0 * 1024;
    double offset = 8 / 5000.0 * 1024;
    double sum = 0;
    double offsets = 0;
    int within = 0;
    int runs = 20;
    for (int seed = 1; seed <= runs; seed++) {
      try (RigWork work = work(SensorSet.INVENTED, seed)) {
        RigCalibration.Calibrated done =
            (RigCalibration.Calibrated) new RigCalibration(work, SWEPT, 29, stage -> {}).run(TODAY);
        ComparatorTrips low = done.profile().tripPoints().get(Channel.CENTRE_LOW);
        sum += low.hysteresisCounts() / runs;
        offsets += low.offsetCounts() / runs;
        double u = low.standardUncertaintyCounts();
        if (Math.abs(low.hysteresisCounts() - hysteresis) < 4 * u
            && Math.abs(low.offsetCounts() - offset) < 2 * u) {
          within++;
        }
        System.out.printf(
            "simulated: seed %d, offset %.2f of %.2f, hysteresis %.2f of %.2f, u %.2f counts%n",
            seed, low.offsetCounts(), offset, low.hysteresisCounts(), hysteresis, u);
      }
    }
    System.out.printf("simulated: means %.2f and %.2f counts%n", offsets, sum);
    assertThat(sum).isCloseTo(hysteresis, within(0.8));
    assertThat(offsets).isCloseTo(offset, within(0.3));
    assertThat(within).isGreaterThanOrEqualTo(18);
  }

  @Test
  void anLedThatIsOutIsSaid() {
    assertThat(refused(sensors(60))).contains("Is it plugged in");
  }

  @Test
  void aSensorAtItsEndIsSaid() {
    assertThat(refused(sensors(5400))).contains("end of its scale");
  }

  @Test
  void anLedTooDimIsSaid() {
    assertThat(refused(sensors(700))).contains("too dim");
  }

  private static String refused(SensorSet sensors) {
    try (RigWork work = work(sensors)) {
      RigCalibration.Outcome outcome = new RigCalibration(work, SHORT, 29, stage -> {}).run(TODAY);
      return CalibrationSentences.refused(((RigCalibration.Refused) outcome).refusal());
    }
  }

  @Test
  void everyRefusalHasASentenceWithANextStep() {
    List<CalibrationRefusal> all =
        List.of(
            new CalibrationRefusal.NoLed(5, 5),
            new CalibrationRefusal.Inverted(700, 20),
            new CalibrationRefusal.Stopped(),
            new CalibrationRefusal.Saturated(1010),
            new CalibrationRefusal.NotDark(300),
            new CalibrationRefusal.TooDim(100),
            new CalibrationRefusal.NothingSeen(Channel.CENTRE_LOW),
            new CalibrationRefusal.WrongPolarity(Channel.CENTRE_HIGH),
            new CalibrationRefusal.Disturbed(Channel.CENTRE_LOW, 7),
            new CalibrationRefusal.TooFewPoints(Channel.CENTRE_LOW, 2),
            new CalibrationRefusal.SlopeNotOne(new SlopeTest(1e-3, 1e-6, 0, 1, 4e-6)),
            new CalibrationRefusal.Restarted(),
            new CalibrationRefusal.NoAnswer());
    assertThat(all.stream().map(CalibrationSentences::refused).distinct()).hasSize(all.size());
    assertThat(CalibrationSentences.refused(all.get(7)))
        .isEqualTo(
            "The high level goes dark when the LED goes on: the two inputs of its comparator are"
                + " swapped. Swap them, then calibrate again.");
  }
}
