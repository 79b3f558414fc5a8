package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.extratest.AdvanceTiming;
import org.halflight.extratest.AdvanceTrial;
import org.halflight.extratest.AdvanceTrial.Reason;
import org.halflight.extratest.ExtraTests;
import org.halflight.fixtures.Seed;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.Reference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The linkage through the real firmware: clicks that ring for 3 ms, or a contact that chatters,
 * beside a firing. The truth is the cycle at which the bench moved each pin. All figures are
 * simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class LinkageOnTheBoardTest {
  private static final double CYCLES_A_SECOND = 16e6;
  private static final double NEAR = 20e-6;
  private static final double RINGING_MILLIS = 3;

  /** The blades sound this long before light comes. */
  private static final double BLADES = 0.0003;

  /** From click to click. */
  private static final double[] APART_MILLIS = {1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 35, 50};

  @TempDir private Path folder;

  /** What was put in. */
  private record Trial(double apartSeconds, boolean advanceFirst, double injectedSeconds) {}

  @Test
  void theIntervalIsTheInjectedOneOrNothingIsClaimed(@Seed(20261125) long seed) throws Exception {
    Random random = new Random(seed);
    Path file = folder.resolve("linkage.session");
    List<Trial> trials = new ArrayList<>();
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(
          box,
          bench,
          2 * APART_MILLIS.length,
          UntimedTest.RELEASE_ALONE,
          UntimedTest.WIND_AND_RELEASE);
      for (int i = 0; i < 3; i++) {
        fire(box, bench, List.of(ring(0.1, random)), 0.1 + BLADES);
      }
      for (double millis : APART_MILLIS) {
        for (boolean advanceFirst : new boolean[] {true, false}) {
          double apart = millis / 1000;
          double blades = 0.2;
          double advance = advanceFirst ? blades - apart : blades + apart;
          int before = box.log().size();
          fire(
              box,
              bench,
              List.of(
                  ring(Math.min(blades, advance), random), ring(Math.max(blades, advance), random)),
              blades + BLADES);
          List<String> log = box.log();
          long first = rise(log, before, "click");
          long opening = rise(log, before, "low");
          double behind = advanceFirst ? 0 : apart;
          trials.add(new Trial(apart, advanceFirst, (opening - first) / CYCLES_A_SECOND - behind));
        }
      }
      assertThat(bench.session().untimedTest()).contains(UntimedTest.WIND_AND_RELEASE);
    }
    Session session = SessionReducer.replay(SessionFile.read(file).events()).session();
    AdvanceTiming linkage = linkage(session);
    assertThat(linkage.trials().size()).isEqualTo(trials.size());
    double worst = 0;
    int told = 0;
    for (int i = 0; i < trials.size(); i++) {
      Trial injected = trials.get(i);
      AdvanceTrial trial = linkage.trials().get(i);
      String which = injected.toString();
      boolean mustBeTold =
          injected.advanceFirst || injected.apartSeconds > RINGING_MILLIS / 1000 + 7e-4;
      if (mustBeTold) {
        assertThat(trial.interval()).as(which).isPresent();
      } else {
        assertThat(trial.reason()).as(which).contains(Reason.TOO_CLOSE);
      }
      if (trial.interval().isPresent()) {
        double error = trial.interval().get().seconds() - injected.injectedSeconds;
        assertThat(error).as(which).isCloseTo(0, within(NEAR));
        worst = Math.max(worst, Math.abs(error));
        told++;
      }
    }
    System.out.printf(
        Locale.ROOT,
        "simulated: %d of %d intervals told through the firmware, the worst %.2f us off; clicks"
            + " ring for 3 ms at 2 to 9 kHz, 1 to 50 ms apart, in either order%n",
        told,
        trials.size(),
        1e6 * worst);
  }

  @Test
  void aContactAtTheAdvanceTellsItToo() throws Exception {
    Path file = folder.resolve("contact.session");
    double[] injected = {0.02, 0.004, 0.001, 0.0002, -0.0004, -0.003, -0.02};
    List<Double> truths = new ArrayList<>();
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(box, bench, injected.length, UntimedTest.WIND_AND_RELEASE);
      for (double interval : injected) {
        int before = box.log().size();
        double touch = 0.2 - interval;
        // Five bounces of 100 us, then closed; opened again when the advance is wound.
        fire(
            box,
            bench,
            List.of(
                String.format(Locale.ROOT, "burst +%.6f contact 11 100", touch),
                String.format(Locale.ROOT, "pin +%.6f contact 0", touch + 0.3)),
            0.2);
        truths.add(
            (rise(box.log(), before, "low") - rise(box.log(), before, "contact"))
                / CYCLES_A_SECOND);
      }
    }
    AdvanceTiming linkage =
        linkage(SessionReducer.replay(SessionFile.read(file).events()).session());
    assertThat(linkage.trials().size()).isEqualTo(injected.length);
    double worst = 0;
    for (int i = 0; i < injected.length; i++) {
      AdvanceTrial.Interval told = linkage.trials().get(i).interval().orElseThrow();
      assertThat(told.byContact()).isTrue();
      assertThat(told.seconds()).isCloseTo(truths.get(i), within(NEAR));
      worst = Math.max(worst, Math.abs(told.seconds() - truths.get(i)));
    }
    System.out.printf(
        Locale.ROOT,
        "simulated: %d intervals told by a contact through the firmware, the worst %.2f us off%n",
        injected.length,
        1e6 * worst);
  }

  private static void ready(BenchInABox box, BoxBench bench, int trials, UntimedTest... checks)
      throws Exception {
    bench.connect();
    bench.setLight();
    box.curve(
        "slow", new LightCurve(new double[] {0, 0.001, 0.125, 0.126}, new double[] {0, 1, 1, 0}));
    bench.handle(
        new SessionInput.RunBegins(
            new RunSetup("", Phase.ADJUSTING, "leaf", List.of(), Reference.EXACT, trials, checks)));
  }

  private static void fire(BenchInABox box, BoxBench bench, List<String> lines, double openSeconds)
      throws Exception {
    int before = bench.session().results().size();
    List<String> all = new ArrayList<>(lines);
    all.add(String.format(Locale.ROOT, "fire +%.6f slow", openSeconds - 0.0002));
    box.say(String.join("\n", all));
    bench.until("a firing", () -> bench.session().results().size() > before);
  }

  private static String ring(double seconds, Random random) {
    return String.format(
        Locale.ROOT,
        "ring +%.6f click %d %.0f",
        seconds,
        2000 + random.nextInt(7000),
        RINGING_MILLIS);
  }

  /** The cycle at which a pin first rose after some lines of the log. */
  private static long rise(List<String> log, int after, String pin) {
    return log.subList(after, log.size()).stream()
        .map(line -> line.split(" ", -1))
        .filter(words -> words[0].equals("edge") && words[2].equals(pin) && words[3].equals("1"))
        .mapToLong(words -> Long.parseLong(words[1]))
        .findFirst()
        .orElseThrow();
  }

  private static AdvanceTiming linkage(Session session) {
    return ExtraTests.of(session.results(), session.readings(), session.runs()).stream()
        .filter(AdvanceTiming.class::isInstance)
        .map(AdvanceTiming.class::cast)
        .findFirst()
        .orElseThrow();
  }
}
