package org.halflight.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.halflight.calibration.EdgeTrain;
import org.halflight.profile.ClockRate;
import org.halflight.rig.RigSelector;
import org.halflight.rig.practice.PracticePorts;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.Channel;
import org.junit.jupiter.api.Test;

/** Edges of known frequency on the practice rig; all figures are simulated. */
class EdgeTrainRunTest {
  private static final double FAST_PPM = 3450;

  private static EdgeTrainRun.Heard heard(double hertz, int edges, double saidHertz) {
    PracticeRig rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3);
    try (RigWork work =
        new RigWork(new LiveFeed(new PracticePorts(rig), RigSelector.any(), System::nanoTime))) {
      while (work.greeting().isEmpty()) {
        work.step();
      }
      // A board that is fast counts more ticks from edge to edge.
      rig.edgeTrain(Channel.CONTACT, hertz / (1 + FAST_PPM * 1e-6), edges);
      return (EdgeTrainRun.Heard)
          new EdgeTrainRun(
                  work, new EdgeTrain(saidHertz, 29, ClockRate.Source.GENERATOR), Channel.CONTACT)
              .run(4, share -> {});
    }
  }

  @Test
  void aGeneratorTellsTheRateOfTheClock() {
    EdgeTrainRun.Heard heard = heard(100, 300, 100);
    ClockRate rate = ((EdgeTrain.Found) heard.found()).rate();
    assertThat(heard.edges()).isEqualTo(300);
    assertThat(rate.fastPpm()).isCloseTo(FAST_PPM, within(1.0));
    assertThat(rate.standardUncertaintyPpm()).isCloseTo(29, within(0.1));
    assertThat(rate.source()).isEqualTo(ClockRate.Source.GENERATOR);
  }

  @Test
  void anotherFrequencyAndNoEdgesAreSaid() {
    assertThat(heard(100, 300, 130).found()).isInstanceOf(EdgeTrain.OtherFrequency.class);
    assertThat(heard(100, 3, 100).found()).isEqualTo(new EdgeTrain.TooFew(3));
  }
}
