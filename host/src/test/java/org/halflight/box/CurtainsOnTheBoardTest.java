package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.Optional;
import org.halflight.exposure.CurtainRun;
import org.halflight.exposure.CurtainTravel;
import org.halflight.exposure.PlacePassing;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.CurtainFault;
import org.halflight.shuttermodel.CurtainMotion;
import org.halflight.shuttermodel.CurtainPass;
import org.halflight.shuttermodel.InventedCurtains;
import org.halflight.shuttermodel.LightPath;
import org.halflight.shuttermodel.LightPaths;
import org.halflight.shuttermodel.SensorBar;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.workflow.PracticeOperator;
import org.halflight.workflow.RunForm;
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
      int first = injected.size() - its.size();
      LongSummaryStatistics late = new LongSummaryStatistics();
      for (int i = 0; i < its.size(); i++) {
        long cycle = injected.get(first + i);
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

  /** Light set and figures made by the host's own code, with comparators that are not ideal. */
  @Test
  void theFiguresOfASlitAreThoseOfTheCurtains() throws Exception {
    Dial dial = Dial.find("curtain").orElseThrow();
    InventedCurtains kind = InventedCurtains.CLOTH_36;
    List<String> scenario =
        List.of(
            "light centre 40 4000",
            "light outerA 55 3000",
            "light outerB 35 3700",
            "lag all 1",
            "hysteresis 12",
            "delay low 0.3 5",
            "delay high 0.3 5",
            "delay outerA 0.3 5",
            "delay outerB 0.3 5",
            BenchInABox.NAMED);
    SensorBar bar = SensorBar.usual(kind.design().frameMillimetres());
    try (BenchInABox box = BenchInABox.start(folder, scenario);
        BoxBench bench = new BoxBench(box, folder.resolve("slit.session"), List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      RunForm usual = RunForm.usual("invented", Phase.ADJUSTING, dial);
      bench.handle(
          new SessionInput.RunBegins(PracticeOperator.form(kind, usual, List.of()).read()));
      for (MarkedSpeed speed : List.of(MarkedSpeed.parse("1/30"), dial.top())) {
        CurtainPass pass =
            kind.with(List.of(CurtainFault.FIRST_DRAGS), dial.speeds(), 1).usualPass(speed);
        LightPaths light = bar.light(pass);
        String name = speed.label().replace('/', '_');
        List<String> curves = new ArrayList<>();
        curve(curves, "c" + name, light.centre());
        curve(curves, "a" + name, light.outerA());
        curve(curves, "b" + name, light.outerB());
        box.say(String.join("\n", curves));
        CurtainTravel travel =
            bench
                .fire(
                    String.format(
                        "c%1$s centre\nfire +0.02 a%1$s outerA\nfire +0.02 b%1$s outerB", name))
                .exposure()
                .curtains()
                .orElseThrow();
        double out = bar.outerMillimetres() * bar.shrinks();
        check(speed + " first", outer(travel.first()), between(pass.first(), out), 0.01);
        check(speed + " second", outer(travel.second()), between(pass.second(), out), 0.01);
        for (PlacePassing at : travel.places()) {
          double place = 18 + List.of(-1, 0, 1).get(travel.places().indexOf(at)) * out;
          double truth = pass.exposureSeconds(place);
          check(speed + " " + at.place(), at.effectiveSeconds().orElseThrow(), truth, 0.01);
        }
      }
    }
  }

  private static double outer(Optional<CurtainRun> run) {
    return run.orElseThrow().outerSeconds();
  }

  private static double between(CurtainMotion motion, double out) {
    return motion.reaches(18 + out).orElseThrow() - motion.reaches(18 - out).orElseThrow();
  }

  private static void check(String what, double seconds, double truth, double share) {
    System.out.printf(
        Locale.ROOT,
        "simulated: %s %.4f ms for %.4f ms, %+.2f %%%n",
        what,
        seconds * 1e3,
        truth * 1e3,
        100 * (seconds / truth - 1));
    assertThat(seconds).as(what).isCloseTo(truth, within(share * truth));
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
