package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.Exposure;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The small rig's firmware in the simulator, a pseudo-terminal, jSerialComm and the same host as
 * for the full rig. The truth is the integral of the curves that were put in. All figures are
 * simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class SmallRigTest {
  private static final List<String> SCENARIO = List.of("light all 40 4000", BenchInABox.NAMED);
  private static final MarkedSpeed TOP = MarkedSpeed.parse("1/500");

  @TempDir private Path folder;

  @Test
  void tenFiringsAtLevelsInTurnGiveTheEffectiveTime() throws Exception {
    Path sessionFile = folder.resolve("small.session");
    List<FiringResult> live;
    double truth = 0;
    try (BenchInABox box = BenchInABox.startSmall(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, sessionFile, List.of(box.port()))) {
      bench.connect();
      assertThat(bench.session().isOneLevelRig()).isTrue();
      assertThat(bench.news()).contains(new SessionEvent.OneLevelRig(false));
      bench.setLight();
      assertThat(bench.session().light()).isPresent();
      bench.handle(
          new SessionInput.RunBegins(
              new RunSetup("", Phase.ADJUSTING, Dial.CUSTOM, List.of(TOP), Reference.EXACT, 99)));
      int before = bench.session().results().size();
      for (int i = 0; i < 10; i++) {
        // 1/500 with ramps of 1 ms, and 3 % of scatter from firing to firing: invented.
        double open = 0.000953 * (1 + 0.03 * (i % 5 - 2));
        LightCurve curve =
            new LightCurve(
                new double[] {0, 0.001, 0.001 + open, 0.002 + open}, new double[] {0, 1, 1, 0});
        truth += curve.integralSeconds() / 10;
        box.curve("c" + i, curve);
        bench.until("the threshold", () -> bench.session().levelStands().isPresent());
        FiringResult first = bench.fire("c" + i);
        if (i == 0) {
          assertThat(first.exposure())
              .isEqualTo(new Exposure.Unusable(Exposure.Reason.OTHER_LEVEL_WANTED, List.of()));
        }
      }
      live = List.copyOf(bench.session().results());
      List<FiringResult> fired = live.subList(before, live.size());
      assertThat(fired).hasSize(10).allMatch(each -> each.outcome() == Outcome.TIMED);
      double mean =
          fired.stream()
              .mapToDouble(each -> each.effectiveSeconds().orElseThrow())
              .average()
              .orElseThrow();
      System.out.printf(
          Locale.ROOT,
          "simulated: small rig, ten firings at 1/500: %+.3f %% of the integral put in%n",
          100 * (mean / truth - 1));
      assertThat(mean / truth).isCloseTo(1, within(0.02));
    }
    assertThat(SessionReducer.replay(SessionFile.read(sessionFile).events()).session().results())
        .isEqualTo(live);
  }
}
