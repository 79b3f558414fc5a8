package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.ReboundSeen;
import org.halflight.session.FiringResult;
import org.halflight.session.Phase;
import org.halflight.session.ReboundOfRun;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.Channel;
import org.halflight.signal.LightCurve;
import org.halflight.signal.SampledLight;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.ReboundWords;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The bench looks for a rebound below the low level through the real firmware. All figures are
 * simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class ReboundOnTheBoardTest {
  private static final MarkedSpeed S250 = MarkedSpeed.parse("1/250");

  /** A triangle of 1.35 ms that peaks at 0.15 of full light, 1.5 ms after the closing. */
  private static final double TRUTH_SECONDS = 0.15 * 1.35e-3 / 2;

  @TempDir private Path folder;

  @Test
  void aFaintReboundAndNoneAtAll() throws Exception {
    Path file = folder.resolve("rebound.session");
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      box.curve("springs-back", shutter(0.15));
      box.curve("stays-shut", shutter(0));
      bench.connect();
      bench.setLight();
      begin(bench, Phase.AS_FOUND);
      fire(box, bench, "springs-back");
      fire(box, bench, "springs-back");
      fire(box, bench, "springs-back");
      begin(bench, Phase.AS_LEFT);
      fire(box, bench, "stays-shut");
      fire(box, bench, "stays-shut");
      bench.driver().wantCurveOf(Optional.of(Channel.OUTER_B));
      fire(box, bench, "stays-shut");
      assertThat(bench.driver().curveWanted()).isEmpty();
    }

    Session session = SessionReducer.replay(SessionFile.read(file).events()).session();
    List<FiringResult> fired = session.results().stream().filter(f -> f.run() > 0).toList();
    // The first of an as-found run does not count, so the second is looked at as well.
    assertThat(fired.stream().map(f -> f.sampledLight().orElseThrow()))
        .extracting(SampledLight::isLong)
        .containsExactly(true, true, false, true, false, false);
    assertThat(fired.stream().map(f -> f.sampledLight().orElseThrow().sensor()))
        .startsWith(Channel.CENTRE_LOW)
        .endsWith(Channel.CENTRE_LOW, Channel.OUTER_B);
    // Its own edges time that firing, and no curve of another place does.
    assertThat(fired.get(5).curveExposure()).isEmpty();
    assertThat(fired.get(5).effectiveSeconds()).isPresent();
    List<FiringResult> found = fired.subList(0, 3);
    double seconds = ReboundOfRun.of(found).secondsAt(S250).orElseThrow();
    System.out.printf(
        Locale.ROOT,
        "simulated: rebound of %.4f ms found as %.4f ms; %s%n",
        1e3 * TRUTH_SECONDS,
        1e3 * seconds,
        ReboundWords.ofRun(found));
    assertThat(seconds).isCloseTo(TRUTH_SECONDS, within(0.1 * TRUTH_SECONDS));
    ReboundSeen seen = found.get(1).reboundSeen().orElseThrow();
    assertThat(seen.peak()).isCloseTo(0.15, within(0.01));
    assertThat(seen.startSeconds()).isCloseTo(1.5e-3, within(0.15e-3));
    assertThat(seen.windowSeconds()).isGreaterThanOrEqualTo(12e-3);
    assertThat(ReboundWords.ofRun(fired.subList(3, 5)))
        .containsExactly("Rebound by the light curve at 1/250: none within 10 ms after closing.");
  }

  private static void begin(BoxBench bench, Phase phase) {
    bench.handle(
        new SessionInput.RunBegins(
            new RunSetup("", phase, "leaf", List.of(S250), Reference.EXACT, 3)));
  }

  /** Somebody takes a second to cock, which is time for some beats. */
  private static void fire(BenchInABox box, BoxBench bench, String curve) throws Exception {
    int before = bench.session().results().size();
    box.say("fire +1 " + curve);
    bench.until(
        "the firing and its light curve",
        () ->
            bench.session().results().size() > before
                && bench.session().results().get(before).curve().isPresent());
  }

  private static LightCurve shutter(double rebound) {
    double ramp = 1e-3;
    double shut = S250.exactSeconds() + ramp;
    double again = shut + 1.5e-3;
    return new LightCurve(
        new double[] {0, ramp, shut - ramp, shut, again, again + 0.675e-3, again + 1.35e-3},
        new double[] {0, 1, 1, 0, 0, rebound, 0});
  }
}
