package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.SessionFile;
import org.halflight.calibration.ClockFit;
import org.halflight.calibration.HostClock;
import org.halflight.calibration.LiveClock;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.signal.LightCurve;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pings between firings on the real firmware in its simulator, as fast as in life: they come and
 * go, the rate of the board's clock is found against the bench's own time, and firings are what
 * they are without them. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class LiveClockOnTheBoardTest {
  private static final double FAST_PPM = 3450;
  private static final double TRUE_SECONDS = 1.0 / 64;

  /** As the board counts, whose rate is not taken into account for a simulated one. */
  private static final double EFFECTIVE_SECONDS = TRUE_SECONDS * (1 + 1e-6 * FAST_PPM);

  @TempDir private Path folder;

  @Test
  void firingsAreUnharmedByPings() throws Exception {
    Path file = folder.resolve("pinged.session");
    try (BenchInABox box =
        BenchInABox.startAsInLife(
            folder, List.of("clock 3450 0", "light all 40 4000", BenchInABox.NAMED))) {
      box.curve(
          "c",
          new LightCurve(
              new double[] {0, 0.001, TRUE_SECONDS, TRUE_SECONDS + 0.001},
              new double[] {0, 1, 1, 0}));
      try (BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
        bench.driver().watchesClock(() -> HostClock.NOT_KNOWN);
        bench.connect();
        bench.setLight();
        for (int i = 0; i < 8; i++) {
          FiringResult fired = bench.fire("c");
          assertThat(fired.outcome()).isEqualTo(Outcome.TIMED);
          assertThat(fired.effectiveSeconds().orElseThrow())
              .isCloseTo(EFFECTIVE_SECONDS, within(2e-6 + 0.005 * 0.001));
          assertThat(fired.firing().damage()).isEmpty();
          assertThat(fired.profileUse().state().liveClock()).isEmpty();
        }
        bench.until("a look at twenty pings", () -> isLookedAt(bench.driver().clock()));
        LiveClock.Known known = (LiveClock.Known) bench.driver().clock();
        assertThat(known.rate().fastPpm())
            .isCloseTo(FAST_PPM, within(2 * known.rate().standardUncertaintyPpm()));
        System.out.println("simulated: clock while measuring: " + bench.driver().clock());
        assertThat(bench.driver().workbench().fold().linkStatistics().missing()).isZero();
        assertThat(bench.session().damageBetweenFirings()).isZero();
      }
    }
    List<BenchEvent> events = SessionFile.read(file).events();
    long pings =
        events.stream()
            .filter(e -> e instanceof BenchEvent.Sent sent && sent.line().startsWith("p "))
            .count();
    long echoes =
        events.stream()
            .filter(e -> e instanceof BenchEvent.Received got && got.line().startsWith("Q "))
            .count();
    assertThat(pings).isGreaterThanOrEqualTo(ClockFit.LEAST);
    assertThat(echoes).isBetween(pings - 1, pings);
  }

  private static boolean isLookedAt(LiveClock clock) {
    return !(clock instanceof LiveClock.TooFew || clock instanceof LiveClock.NotWatched);
  }
}
