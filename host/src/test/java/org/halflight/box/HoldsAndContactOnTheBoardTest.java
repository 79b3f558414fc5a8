package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.Marks;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.exposure.Exposure;
import org.halflight.extratest.ContactShot;
import org.halflight.extratest.ExtraTest;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.FlashContact;
import org.halflight.extratest.Holds;
import org.halflight.extratest.SelfTimer;
import org.halflight.job.CheckState;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.ContactWords;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * B, T, self-timer and flash contact through the real firmware: the truth is the cycle at which the
 * bench injected each edge. All figures are simulated.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class HoldsAndContactOnTheBoardTest {
  private static final List<String> SCENARIO = List.of("light all 40 4000", BenchInABox.NAMED);
  private static final double CYCLES_PER_SECOND = 16e6;
  private static final MarkedSpeed S60 = MarkedSpeed.parse("1/60");

  /** What the contact may be off by: it is seen by software, the low level by capture. */
  private static final double CONTACT_SECONDS = 2e-6;

  @TempDir private Path folder;

  /** Cycles at which a pin was injected, as the log of the bench has them. */
  private static List<Long> injected(List<String> log, String pin) {
    return log.stream()
        .map(line -> line.split(" "))
        .filter(words -> words[0].equals("edge") && words[2].equals(pin))
        .map(words -> Long.parseLong(words[1]))
        .toList();
  }

  private static RunSetup setup(List<MarkedSpeed> speeds, UntimedTest... checks) {
    return new RunSetup("", Phase.AS_LEFT, "leaf", speeds, Reference.EXACT, 99, checks);
  }

  private static <T extends ExtraTest> T tried(SessionReducer fold, Class<T> kind) {
    return ExtraTests.of(fold.session().results(), fold.session().readings(), fold.session().runs())
        .stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .findFirst()
        .orElseThrow();
  }

  /** A firing of 1/60 with straight ramps of 1 ms, and a contact that closes with bounces. */
  private static String firing(double at, double closesMillis, int bounces, double opensMillis) {
    StringBuilder lines = new StringBuilder("fire +" + at + " sixtieth\n");
    for (int i = 0; i < bounces; i++) {
      lines.append(pin(at + (closesMillis + 0.1 * i) * 1e-3, "contact", 1));
      lines.append(pin(at + (closesMillis + 0.1 * i + 0.05) * 1e-3, "contact", 0));
    }
    lines.append(pin(at + (closesMillis + 0.1 * bounces) * 1e-3, "contact", 1));
    lines.append(pin(at + opensMillis * 1e-3, "contact", 0));
    return lines.toString().stripTrailing();
  }

  private static String pin(double seconds, String pin, int level) {
    return String.format(Locale.ROOT, "pin +%.7f %s %d%n", seconds, pin, level);
  }

  @Test
  void theContactIsRightToTwoMicrosecondsWithTenBouncesAndChatterCostsNoFiring() throws Exception {
    Path file = folder.resolve("contact.session");
    List<String> log;
    int before;
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.handle(new SessionInput.RunBegins(setup(List.of(S60))));
      box.say("curve sixtieth\n0 0\n1000 1\n16667 1\n17667 0\nend-curve");
      before = bench.session().results().size();
      // In time with ten bounces, two that are early, one that is late, and one that never closes.
      for (String each :
          List.of(
              firing(0.05, 1.3, 10, 16.7),
              firing(0.05, -4.0, 0, 16.7),
              firing(0.05, -15.5, 0, 16.7),
              firing(0.05, 17.2, 1, 19),
              "fire +0.05 sixtieth")) {
        int had = bench.session().results().size();
        box.say(each);
        bench.until("a firing", () -> bench.session().results().size() > had);
      }
      log = box.log();
      FlashContact.AtSpeed at =
          tried(SessionReducer.replay(SessionFile.read(file).events()), FlashContact.class)
              .speeds()
              .get(0);
      assertThat(at.shots()).hasSize(5);
      assertThat(at.shots().get(0).bounces()).isEqualTo(10);
      assertThat(at.shots())
          .extracting(ContactShot::how)
          .containsExactly(
              ContactShot.How.CLOSED,
              ContactShot.How.CLOSED,
              ContactShot.How.CLOSED,
              ContactShot.How.CLOSED,
              ContactShot.How.NEVER);
      timesAreThoseInjected(log, bench.session().results().subList(before, before + 4), at);

      chatterForEver(box, bench);
    }
    SessionReducer replayed = SessionReducer.replay(SessionFile.read(file).events());
    FlashContact contact = tried(replayed, FlashContact.class);
    assertThat(contact.count(ContactShot.How.CHATTERS)).isEqualTo(3);
    assertThat(contact.state()).isEqualTo(CheckState.FAULT);
    assertThat(ContactWords.lines(contact))
        .anyMatch(line -> line.contains("did not close in 1 of"))
        .anyMatch(line -> line.contains("chatters without end in 3 of"));
  }

  private static void timesAreThoseInjected(
      List<String> log, List<FiringResult> results, FlashContact.AtSpeed at) {
    List<Long> contact = injected(log, "contact");
    List<Long> low = injected(log, "low");
    // Light was set before: its opening is the first pair of the low level.
    low = low.subList(low.size() - 10, low.size());
    int next = 0;
    double least = 0;
    double most = 0;
    for (int i = 0; i < results.size(); i++) {
      List<Edge> seen = results.get(i).firing().of(Channel.CONTACT);
      long zero = ((Exposure.Timed) results.get(i).exposure()).crossings().lowRiseTicks();
      for (Edge edge : seen) {
        double error =
            ((edge.ticks() - zero) - (contact.get(next++) - low.get(2 * i))) / CYCLES_PER_SECOND;
        least = Math.min(least, error);
        most = Math.max(most, error);
      }
      long first = contact.get(next - seen.size());
      assertThat(at.shots().get(i).closingSeconds())
          .isCloseTo((first - low.get(2 * i)) / CYCLES_PER_SECOND, within(CONTACT_SECONDS));
      assertThat(at.shots().get(i).durationSeconds())
          .isCloseTo((contact.get(next - 1) - first) / CYCLES_PER_SECOND, within(CONTACT_SECONDS));
    }
    assertThat(next).isEqualTo(contact.size());
    System.out.printf(
        Locale.ROOT,
        "simulated: flash contact, %d edges against the low level: %+.3f to %+.3f us%n",
        next,
        1e6 * least,
        1e6 * most);
    assertThat(Math.max(most, -least)).isLessThan(CONTACT_SECONDS);
  }

  /**
   * A contact that opens and closes 250 times a second for 12 s: three firings within it are timed.
   */
  private static void chatterForEver(BenchInABox box, BoxBench bench) throws Exception {
    int had = bench.session().results().size();
    box.say("burst +0.1 contact 6000 2000");
    for (int i = 0; i < 3; i++) {
      double at = 1 + 3.5 * i;
      box.say(
          pin(at - 0.02, "release", 1)
              + String.format(Locale.ROOT, "fire +%.3f sixtieth%n", at)
              + pin(at + 0.2, "release", 0).stripTrailing());
    }
    bench.until(
        "three firings among the chatter",
        () ->
            bench.session().results().stream()
                    .skip(had)
                    .filter(result -> result.outcome() == Outcome.TIMED)
                    .count()
                == 3);
    bench.session().results().stream()
        .skip(had)
        .filter(result -> result.outcome() == Outcome.TIMED)
        .forEach(
            result ->
                assertThat(result.effectiveSeconds().orElseThrow())
                    .isCloseTo(0.016667, within(2e-5)));
  }

  @Test
  void theSelfTimerRunsTenSeconds() throws Exception {
    Path file = folder.resolve("timer.session");
    try (BenchInABox box = BenchInABox.start(folder, SCENARIO);
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      bench.connect();
      bench.setLight();
      bench.handle(new SessionInput.RunBegins(setup(List.of(), UntimedTest.SELF_TIMER)));
      box.say("curve sixtieth\n0 0\n1000 1\n16667 1\n17667 0\nend-curve");
      List<String> before = box.log();
      box.say(pin(0.1, "release", 1) + pin(0.25, "release", 0) + "fire +10.1 sixtieth");
      bench.until(
          "light by the self-timer",
          () ->
              ExtraTests.of(bench.session().results(), List.of(), bench.session().runs()).stream()
                  .anyMatch(t -> t instanceof SelfTimer timer && timer.seconds().size() == 1));
      List<String> log = box.log().subList(before.size(), box.log().size());
      double truth =
          (injected(log, "low").get(0) - injected(log, "release").get(0)) / CYCLES_PER_SECOND;
      SelfTimer timer =
          tried(SessionReducer.replay(SessionFile.read(file).events()), SelfTimer.class);
      System.out.printf(
          Locale.ROOT,
          "simulated: self-timer of %.6f s found as %.6f s%n",
          truth,
          timer.seconds().get(0));
      assertThat(truth).isCloseTo(10, within(0.01));
      assertThat(timer.seconds().get(0)).isCloseTo(truth, within(CONTACT_SECONDS));
      assertThat(timer.neverCame() + timer.atOnce() + timer.withoutPress()).isZero();
      assertThat(timer.state()).isEqualTo(CheckState.OK);
    }
  }

  /**
   * The counter is put near the end of its 32 bits first, so that it wraps while the shutter is
   * open, however short that is.
   */
  @Test
  void tIsRightToATickUnpaced() throws Exception {
    int seconds = Integer.getInteger("halflight.secondsOfT", 120);
    double opens = 1.0;
    double closes = opens + seconds;
    List<String> scenario =
        new ArrayList<>(
            List.of(
                "light all 40 4000",
                BenchInABox.NAMED,
                // 50 s before the wrap.
                "preset 0.3 " + String.format("%012X", 0x1_0000_0000L - 50 * 16_000_000L)));
    scenario.addAll(
        Arrays.asList(
            (scenarioPin(opens - 0.02, 1)
                    + scenarioPin(opens + 0.2, 0)
                    + "hold "
                    + opens
                    + " 1\n"
                    + scenarioPin(closes - 0.01, 1)
                    + scenarioPin(closes + 0.2, 0)
                    + "hold "
                    + closes
                    + " 0\n"
                    + "end "
                    + (closes + 1.5))
                .split("\n")));
    SessionReducer fold =
        UnpacedBoard.run(
            folder,
            scenario,
            List.of(Marks.of(0, new SessionInput.RunBegins(setup(List.of(), UntimedTest.T)))));
    List<String> log = Files.readAllLines(folder.resolve("log"));
    List<Long> low = injected(log, "low");
    long truth = low.get(low.size() - 1) - low.get(low.size() - 2);
    Holds.Shot shot = tried(fold, Holds.class).shots().get(0);
    double ticksOff = shot.openSeconds().getAsDouble() * CYCLES_PER_SECOND - truth;
    System.out.printf(
        Locale.ROOT,
        "simulated: T of %.6f s, unpaced, is off by %+.1f ticks, %+.4f ppm of the clock%n",
        truth / CYCLES_PER_SECOND,
        ticksOff,
        1e6 * ticksOff / truth);
    assertThat(truth / CYCLES_PER_SECOND).isCloseTo(seconds, within(0.01));
    assertThat(ticksOff).isCloseTo(0, within(2.0));
    assertThat(shot.outcome()).isEqualTo(Outcome.OPENS_HOLDS_CLOSES);
    assertThat(shot.closingDelaySeconds().getAsDouble()).isCloseTo(0.01, within(1e-4));
    assertThat(tried(fold, Holds.class).state()).isEqualTo(CheckState.OK);
  }

  private static String scenarioPin(double seconds, int level) {
    return String.format(Locale.ROOT, "pin %.7f release %d%n", seconds, level);
  }
}
