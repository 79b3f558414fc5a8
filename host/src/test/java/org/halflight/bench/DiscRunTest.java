package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.calibration.DiscReading;
import org.halflight.calibration.PrintedDisc;
import org.halflight.exposure.LightLevels;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.Lamp;
import org.halflight.shuttermodel.LevelComparators;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.workflow.DiscSentences;
import org.junit.jupiter.api.Test;

/** A disc before the practice rig; all figures are simulated, the disc's geometry is the truth. */
class DiscRunTest {
  private static final PrintedDisc CUT_WELL = new PrintedDisc(PrintedDisc.SLOT_DEGREES, 0.05, 63);

  private static SensorSet sensors(double fullMillivolts, Lamp lamp) {
    FrontEnd sensor = new FrontEnd(40, fullMillivolts, 1, 1.5, lamp);
    return new SensorSet(sensor, sensor, sensor).with(LevelComparators.INVENTED);
  }

  private static DiscRun.Outcome outcome(SensorSet sensors, TurningDisc disc) {
    return outcome(sensors, disc, new ArrayList<>());
  }

  private static DiscRun.Outcome outcome(
      SensorSet sensors, TurningDisc disc, List<DiscRun.Stage> stages) {
    PracticeRig rig =
        PracticeRig.unpaced(InventedShutters.soundLeaf(InventedShutters.dial(), 3), sensors, 3);
    if (disc != null) {
      rig.turnDisc(disc);
    }
    try (RigWork work = new RigWork(new PumpFeed(rig, () -> 0))) {
      while (work.greeting().isEmpty()) {
        work.step();
      }
      return new DiscRun(work, stages::add, part -> {}).run(4, Optional.empty());
    }
  }

  @Test
  void theSlotsOfTheInventedDiscComeOutAsTheyAreCut() {
    TurningDisc disc = TurningDisc.invented(7);
    List<DiscRun.Stage> stages = new ArrayList<>();
    DiscEdges edges = ((DiscRun.Taken) outcome(SensorSet.INVENTED, disc, stages)).edges();
    assertThat(stages).containsExactly(DiscRun.Stage.values());
    DiscReading reading = ((DiscReading.Found) edges.read(CUT_WELL, Optional.empty())).reading();
    DiscComparison comparison = DiscComparison.of(reading, RigKnowledge.UNCALIBRATED);
    assertThat(reading.turns()).isGreaterThan(30);
    assertThat(comparison.rows()).hasSize(5);
    for (int i = 0; i < 5; i++) {
      DiscComparison.Row row = comparison.rows().get(i);
      double truth = reading.turnSeconds() * disc.degreesSeen(i) / 360;
      double error = row.slot().effectiveSeconds() - truth;
      System.out.printf(
          Locale.ROOT,
          "simulated: slot of %.1f degrees %.1f us off its cut, rig states %.1f us%n",
          row.slot().degrees(),
          1e6 * error,
          1e6 * row.rigSeconds());
      assertThat(Math.abs(error)).isLessThan(row.rigSeconds());
    }
    assertThat(comparison.verdict()).isNotEqualTo(DiscComparison.Verdict.DISAGREES);
    assertThat(CUT_WELL.millimetres(reading.swingDegrees())).isCloseTo(0.33, within(0.1));
    assertThat(reading.turnSeconds()).isCloseTo(0.1, within(0.001));
  }

  @Test
  void aLightThatIsWrongIsToldWithWhatToDo() {
    TurningDisc disc = TurningDisc.invented(7);
    assertThat(light(outcome(SensorSet.INVENTED, null))).isInstanceOf(DiscLight.Still.class);
    assertThat(light(outcome(sensors(4950, Lamp.STEADY), disc)))
        .isEqualTo(new DiscLight.Refused(LightLevels.Reason.SATURATED));
    assertThat(light(outcome(sensors(700, Lamp.STEADY), disc)))
        .isEqualTo(new DiscLight.Refused(LightLevels.Reason.LIGHT_TOO_LOW));
    assertThat(light(outcome(sensors(3500, new Lamp(0, 1, 100, 0.1)), disc)))
        .isInstanceOf(DiscLight.Unsteady.class);
    for (DiscRun.Outcome each :
        List.of(
            outcome(SensorSet.INVENTED, null),
            outcome(sensors(3500, new Lamp(0, 1, 100, 0.02)), disc),
            outcome(sensors(4950, Lamp.STEADY), disc))) {
      assertThat(DiscSentences.notTaken(each)).endsWith(".").contains(" ");
    }
  }

  private static DiscLight.Outcome light(DiscRun.Outcome outcome) {
    return ((DiscRun.NoLight) outcome).light();
  }
}
