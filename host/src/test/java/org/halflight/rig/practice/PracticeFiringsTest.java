package org.halflight.rig.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.fixtures.Seeds;
import org.halflight.rig.RigEvent;
import org.halflight.rig.RigLine;
import org.halflight.rig.RigStream;
import org.halflight.shuttermodel.FrontEnd;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.LeafShutter;
import org.halflight.shuttermodel.ModelFiring;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.signal.BoardTraits;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.Firing;
import org.halflight.signal.FiringGrouper;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Stops;
import org.halflight.time.TickRate;
import org.junit.jupiter.api.Test;

/** What the practice rig says goes through the host's own reading and grouping unharmed. */
class PracticeFiringsTest {
  private static final long SEED = Seeds.usually(77);

  @Test
  void everyFiringIsFoundWholeAndAboutAsLongAsItsTruth() {
    List<MarkedSpeed> dial = InventedShutters.dial();
    LeafShutter shutter = InventedShutters.cleanedSlowTrain(dial, SEED);
    PracticeRig rig = PracticeRig.unpaced(shutter, SensorSet.INVENTED, SEED);
    Listener listener = new Listener(rig);
    for (MarkedSpeed speed : dial) {
      rig.chooseSpeed(speed);
      for (int i = 0; i < 3; i++) {
        rig.fire();
      }
    }
    listener.receive();
    List<Firing> firings = grouped(listener.text());
    List<PracticeFiring> truths = rig.firings();
    assertThat(firings).hasSameSizeAs(truths);
    FrontEnd sensor = SensorSet.INVENTED.centre();
    for (int i = 0; i < firings.size(); i++) {
      assertThat(firings.get(i).damage()).as("seed %d, %s", SEED, firings.get(i)).isEmpty();
      ModelFiring.Timed timed = (ModelFiring.Timed) truths.get(i).model();
      double measured =
          (width(firings.get(i), Channel.CENTRE_LOW) + width(firings.get(i), Channel.CENTRE_HIGH))
              / 2;
      // Levels of whole threshold codes are not quite those of Gauss; a percent or so is theirs.
      assertThat(sensor.levelOf(0x2B)).isCloseTo(0.2113, within(0.006));
      assertThat(Stops.between(measured, timed.effectiveSeconds()))
          .as("seed %d, %s", SEED, truths.get(i).speed())
          .isCloseTo(0, within(0.02));
    }
  }

  private static double width(Firing firing, Channel channel) {
    List<Edge> edges = firing.of(channel);
    assertThat(edges).extracting(Edge::high).containsExactly(true, false);
    return TickRate.BOARD_16_MHZ.seconds(edges.get(1).ticks() - edges.get(0).ticks());
  }

  private static List<Firing> grouped(String text) {
    RigStream stream = new RigStream();
    FiringGrouper grouper = new FiringGrouper(TickRate.BOARD_16_MHZ.ticks(0.2), BoardTraits.USUAL);
    List<Firing> firings = new ArrayList<>();
    for (String line : text.split("\n", -1)) {
      if (line.isEmpty()) {
        continue;
      }
      for (RigEvent event : stream.accept(RigLine.of(line))) {
        assertThat(event)
            .isNotInstanceOfAny(
                RigEvent.LinesLost.class, RigEvent.EdgesLost.class, RigEvent.Ignored.class);
        if (event instanceof RigEvent.EdgeAt edge) {
          firings.addAll(grouper.add(edge.edge()));
        } else if (event instanceof RigEvent.TimeAt time) {
          firings.addAll(grouper.beat(time.ticks(), time.levels()));
        }
      }
    }
    return firings;
  }
}
