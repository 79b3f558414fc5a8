package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.LongSummaryStatistics;
import java.util.Map;
import org.halflight.session.FiringResult;
import org.halflight.shuttermodel.CurtainPass;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.LightPaths;
import org.halflight.shuttermodel.SensorBar;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * A slit of 2 mm at 1/1000 over all three sensors, each in a light of its own, through the real
 * firmware. The truth is the cycle at which the bench injected each edge. All figures are
 * simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class CurtainsOnTheBoardTest {
  private static final int FIRINGS = 40;

  /** What docs/protocol.md allows a software channel while no other edge is near. */
  private static final long TICKS_MOST = 8;

  private static final Map<Channel, String> PINS =
      Map.of(
          Channel.CENTRE_LOW, "low",
          Channel.CENTRE_HIGH, "high",
          Channel.OUTER_A, "outerA",
          Channel.OUTER_B, "outerB");

  @TempDir private Path folder;

  @Test
  void everyEdgeOfAFastSlitIsWithinTheBoundsOfItsChannel() throws Exception {
    Dial dial = Dial.find("curtain").orElseThrow();
    MarkedSpeed fastest = dial.top();
    CurtainPass pass = InventedCurtains.CLOTH_36.sound(dial.speeds(), 1).usualPass(fastest);
    double slit = pass.firstAt(0.0224) - pass.secondAt(0.0224);
    LightPaths light = SensorBar.usual(pass.frameMillimetres()).light(pass);
    List<String> scenario =
        new ArrayList<>(
            List.of("light centre 40 4000", "light outerA 55 3350", "light outerB 35 3700"));
    curve(scenario, "centre", light.centre());
    curve(scenario, "outerA", light.outerA());
    curve(scenario, "outerB", light.outerB());
    for (int i = 0; i < FIRINGS; i++) {
      // A third of a cycle and more apart from firing to firing, so that each meets another phase.
      double at = 0.5 + 0.3 * i + i * 1.3e-6 / 3;
      for (String sensor : List.of("centre", "outerA", "outerB")) {
        scenario.add(String.format(Locale.ROOT, "fire %.9f %s %s", at, sensor, sensor));
      }
    }
    scenario.add("end " + (1 + 0.3 * FIRINGS));
    List<FiringResult> results = UnpacedBoard.run(folder, scenario).session().results();
    assertThat(results).hasSize(FIRINGS);
    List<Edge> told = results.stream().flatMap(result -> result.firing().edges().stream()).toList();
    long origin = 0;
    System.out.printf(Locale.ROOT, "simulated: slit of %.2f mm at the centre%n", slit);
    for (Channel channel : PINS.keySet().stream().sorted().toList()) {
      List<Long> injected = injected(PINS.get(channel));
      List<Edge> its = told.stream().filter(edge -> edge.channel() == channel).toList();
      assertThat(its).as("%s", channel).hasSize(2 * FIRINGS);
      long first = injected.size() - its.size();
      LongSummaryStatistics late = new LongSummaryStatistics();
      for (int i = 0; i < its.size(); i++) {
        long cycle = injected.get((int) first + i);
        if (channel == Channel.CENTRE_LOW && i == 0) {
          // The capture latches the cycle of the edge itself: this makes cycles into ticks.
          origin = cycle - its.get(0).ticks();
        }
        late.accept(its.get(i).ticks() - (cycle - origin));
      }
      System.out.printf(
          Locale.ROOT,
          "simulated: %s, %d edges: %+d to %+d ticks behind the injected cycle, mean %+.2f%n",
          channel,
          its.size(),
          late.getMin(),
          late.getMax(),
          late.getAverage());
      long most = channel == Channel.CENTRE_LOW ? 0 : TICKS_MOST;
      assertThat(late.getMin()).as("%s", channel).isGreaterThanOrEqualTo(-most);
      assertThat(late.getMax()).as("%s", channel).isLessThanOrEqualTo(most);
    }
  }

  private static void curve(List<String> scenario, String name, LightPath path) {
    scenario.add("curve " + name);
    double[] seconds = path.seconds();
    double[] open = path.open();
    for (int i = 0; i < seconds.length; i++) {
      scenario.add(String.format(Locale.ROOT, "%.3f %.9f", seconds[i] * 1e6, open[i]));
    }
    scenario.add("end-curve");
  }

  private List<Long> injected(String pin) throws IOException {
    return Files.readAllLines(folder.resolve("log")).stream()
        .map(line -> line.split(" "))
        .filter(words -> words[0].equals("edge") && words[2].equals(pin))
        .map(words -> Long.parseLong(words[1]))
        .toList();
  }
}
