package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.LightProbe;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.StopScale;
import org.halflight.session.LightReading.What;
import org.halflight.session.Outcome;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * A stop check and a leak test through the real firmware: the truth is the share of light that the
 * bench was told to let through. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class StopsAndLeakOnTheBoardTest {
  private static final List<String> SCENARIO = List.of("light all 40 4000", BenchInABox.NAMED);

  /** f/2.8, 4, 5.6, 8 and 11: stops below the first, by no marking. */
  private static final double[] BELOW = {0, 1.08, 2.0, 3.2, 4.55};

  private static final String[] NUMBERS = {"2.8", "4", "5.6", "8", "11"};

  /** How much darker each is on the way up. */
  private static final double BACKLASH = 0.15;

  @TempDir private Path folder;

  @Test
  void stopsAndLeakComeOutAsTheyWerePutIn() throws Exception {
    Path file = folder.resolve("light.session");
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.driver().light().beginReadings();
      box.say("lamp +0 0");
      read(bench, What.LAMP_COVERED, "", false);
      box.say("lamp +0 1");
      read(bench, What.SHUT_UNCOCKED, "", false);
      // Nine stops below full light: 1/512 of 811 counts is 1.6 counts.
      box.say("hold +0 0.001953125");
      read(bench, What.SHUT_COCKED, "", false);
      for (int i = 0; i < BELOW.length; i++) {
        hold(box, BELOW[i]);
        read(bench, What.STOP, NUMBERS[i], false);
      }
      for (int i = BELOW.length - 2; i >= 0; i--) {
        hold(box, BELOW[i] + (i == 0 ? 0 : BACKLASH));
        read(bench, What.STOP, NUMBERS[i], true);
      }
      box.say("hold +0 0");
      bench.until("the shutter to close", () -> bench.session().isQuiet());
      bench.driver().light().endReadings();
    }

    SessionReducer replayed = SessionReducer.replay(SessionFile.read(file).events());
    assertThat(replayed.damagedMarks()).isZero();
    assertThat(replayed.session().results())
        .allMatch(firing -> firing.outcome() == Outcome.HELD_FOR_LIGHT);
    List<ExtraTest> tried =
        ExtraTests.of(
            replayed.session().results(), replayed.session().readings(), replayed.session().runs());
    leak((LightLeak) tried.get(0));
    stops((StopScale) tried.get(1));
  }

  private static void leak(LightLeak leak) {
    LightLeak.Reading shut = leak.uncocked().orElseThrow();
    LightLeak.Reading cocked = leak.cocked().orElseThrow();
    System.out.printf(
        Locale.ROOT,
        "simulated: leak of 9 stops below full light: found %.2f, floor %.2f; without one %.3f"
            + " counts%n",
        cocked.belowFullStops().orElseThrow(),
        cocked.floorStops().orElseThrow(),
        shut.differenceCounts());
    assertThat(shut.found()).isEqualTo(LightLeak.Found.NOTHING);
    assertThat(cocked.found()).isEqualTo(LightLeak.Found.LEAK);
    // The standard uncertainty of the difference, 0.41 counts, is 0.37 stop of 1.6 counts.
    assertThat(cocked.belowFullStops().orElseThrow()).isCloseTo(9, within(2 * 0.37));
    assertThat(cocked.floorStops().orElseThrow()).isGreaterThan(9.5);
  }

  private static void stops(StopScale scale) {
    assertThat(scale.trouble()).isEmpty();
    assertThat(scale.stops()).hasSize(BELOW.length);
    for (int i = 1; i < BELOW.length; i++) {
      StopScale.AtStop stop = scale.stops().get(i);
      double unsure = 2 * stop.uncertaintyStops();
      System.out.printf(
          Locale.ROOT,
          "simulated: f/%s: %+.4f stop of the light put in stopping down, uncertainty (k = 2)"
              + " %.4f%n",
          NUMBERS[i],
          stop.downStops().orElseThrow() + BELOW[i],
          unsure);
      assertThat(stop.downStops().orElseThrow()).isCloseTo(-BELOW[i], within(unsure));
      if (i < BELOW.length - 1) {
        assertThat(stop.backlashStops().orElseThrow()).isCloseTo(-BACKLASH, within(unsure));
      }
    }
    // f/8 is 0.2 stop dark on the way down and 0.35 on the way up, and the worse way counts.
    assertThat(scale.having(StopScale.Verdict.DARK))
        .extracting(stop -> stop.number().engraved())
        .containsExactly("8", "11");
  }

  private static void hold(BenchInABox box, double stopsBelow) throws Exception {
    box.say(String.format(Locale.ROOT, "hold +0 %.9f", Math.pow(2, -stopsBelow)));
  }

  private static void read(BoxBench bench, What what, String at, boolean opening) {
    LightProbe probe = bench.driver().light().read(what, at, opening);
    bench.until("the light of " + what + at, () -> probe.step() != LightProbe.Step.READING);
    assertThat(probe.step()).isEqualTo(LightProbe.Step.DONE);
  }
}
