package org.halflight.box;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.extratest.Evidence;
import org.halflight.extratest.ExtraTests;
import org.halflight.extratest.JudgedPress;
import org.halflight.extratest.Linkage;
import org.halflight.extratest.LinkageJudgement;
import org.halflight.extratest.PressOutcome;
import org.halflight.extratest.SqueezeOrder;
import org.halflight.extratest.UnlockSign;
import org.halflight.rig.RigMessage;
import org.halflight.session.FiringResult;
import org.halflight.session.LinkageStep;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.halflight.signal.LightCurve;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.workflow.BenchLight;
import org.halflight.workflow.BenchLinkage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * The knob contact through the real firmware: moves, chatter, and the linkage test led press by
 * press. All figures are simulated; camera, foil and finger are invented.
 */
@ExtendWith(AvrTools.class)
@Tag("board")
class KnobOnTheBoardTest {
  private static final MarkedSpeed S125 = MarkedSpeed.parse("1/125");

  /** A round of the main loop, and where the burst of the scenario leaves the wire. */
  private static final double NEAR_SECONDS = 0.0008;

  @TempDir private Path folder;

  private static void ready(BenchInABox box, BoxBench bench, UntimedTest... checks)
      throws Exception {
    bench.connect();
    bench.setLight();
    box.curve(
        "slow", new LightCurve(new double[] {0, 0.001, 0.125, 0.126}, new double[] {0, 1, 1, 0}));
    box.curve(
        "fast", new LightCurve(new double[] {0, 0.001, 0.0078, 0.0088}, new double[] {0, 1, 1, 0}));
    bench.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "",
                Phase.ADJUSTING,
                "leaf",
                checks.length > 0 ? List.of() : List.of(S125),
                Reference.EXACT,
                30,
                checks)));
  }

  /** The linkage test, led press by press until so many are judged. */
  private static void lead(BoxBench bench, ScriptedButton button, int presses) {
    BenchLight light = new BenchLight(bench.driver(), button);
    BenchLinkage linkage = new BenchLinkage(bench.driver(), button, light);
    bench.until(
        presses + " presses",
        () -> {
          linkage.advance();
          return bench.session().presses().size() >= presses;
        });
  }

  private static Linkage linkage(Session session) {
    return ExtraTests.of(Evidence.of(session), session.runs()).stream()
        .filter(Linkage.class::isInstance)
        .map(Linkage.class::cast)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aLinkageInOneClickIsRightAndTheFoilTellsSo() throws Exception {
    Path file = folder.resolve("one.session");
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(box, bench, UntimedTest.LINKAGE);
      ScriptedButton button = new ScriptedButton(box, 0.006);
      lead(bench, button, LinkageStep.PRESSES);
      assertThat(button.pressed()).hasSize(LinkageStep.PRESSES);
    }
    Session session = SessionReducer.replay(SessionFile.read(file).events()).session();
    LinkageJudgement judged = linkage(session).judged();
    assertThat(judged.verdict()).isEqualTo(LinkageJudgement.Verdict.RIGHT);
    assertThat(judged.of(LinkageStep.REST))
        .extracting(JudgedPress::outcome)
        .containsExactly(PressOutcome.NEITHER);
    List<JudgedPress> squeezes = judged.of(LinkageStep.SQUEEZE);
    assertThat(squeezes).extracting(JudgedPress::order).containsOnly(SqueezeOrder.ONE_CLICK);
    assertThat(squeezes)
        .allSatisfy(
            press -> {
              assertThat(press.sign().by()).isEqualTo(UnlockSign.By.KNOB);
              assertThat(press.aheadSeconds().orElseThrow()).isCloseTo(0.006, within(NEAR_SECONDS));
            });
    assertThat(session.results()).allSatisfy(f -> assertThat(f.firing().damage()).isEmpty());
  }

  @Test
  void anAdvanceThatUnlocksFirstIsWrongByStateAndTheFoilTellsTheOrder() throws Exception {
    Path file = folder.resolve("advance.session");
    int presses = 1 + LinkageStep.STOP.presses() + 2;
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(box, bench, UntimedTest.LINKAGE);
      lead(bench, new ScriptedButton(box, 0.35), presses);
    }
    LinkageJudgement judged =
        linkage(SessionReducer.replay(SessionFile.read(file).events()).session()).judged();
    assertThat(judged.fault()).contains(LinkageJudgement.Fault.ADVANCE_FIRST);
    assertThat(judged.of(LinkageStep.STOP))
        .extracting(JudgedPress::outcome)
        .containsOnly(PressOutcome.ADVANCE_ONLY);
    assertThat(judged.of(LinkageStep.SQUEEZE))
        .hasSize(2)
        .allSatisfy(
            press -> {
              assertThat(press.order()).isEqualTo(SqueezeOrder.ADVANCE_FIRST);
              assertThat(press.aheadSeconds().orElseThrow()).isCloseTo(0.35, within(NEAR_SECONDS));
            });
  }

  @Test
  void aShutterThatTripsFirstIsWrongByStateAndTheFoilComesAfterTheFiring() throws Exception {
    Path file = folder.resolve("shutter.session");
    int presses = 1 + LinkageStep.STOP.presses() + 2;
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(box, bench, UntimedTest.LINKAGE);
      lead(bench, new ScriptedButton(box, -0.6), presses);
    }
    LinkageJudgement judged =
        linkage(SessionReducer.replay(SessionFile.read(file).events()).session()).judged();
    assertThat(judged.fault()).contains(LinkageJudgement.Fault.SHUTTER_FIRST);
    assertThat(judged.of(LinkageStep.SQUEEZE))
        .hasSize(2)
        .allSatisfy(
            press -> {
              assertThat(press.order()).isEqualTo(SqueezeOrder.SHUTTER_FIRST);
              assertThat(press.aheadSeconds().orElseThrow()).isCloseTo(-0.6, within(NEAR_SECONDS));
            });
  }

  @Test
  void aFoilThatChattersLeavesEveryFiringWhole() throws Exception {
    Path file = folder.resolve("chatter.session");
    List<String> log;
    try (BenchInABox box =
            BenchInABox.start(folder, List.of("light all 40 4000", BenchInABox.NAMED));
        BoxBench bench = new BoxBench(box, file, List.of(box.port()))) {
      ready(box, bench);
      for (int i = 0; i < 12; i++) {
        int before = bench.session().results().size();
        // 200 edges in 50 ms, with the firing at another moment of it each time.
        box.say(
            String.format(
                Locale.ROOT,
                "pin +0 knob 1%nburst +0.3 knob 202 250%nfire +%.6f fast%nburst +%.6f release 2"
                    + " 20000",
                0.29 + 0.005 * i,
                0.28 + 0.005 * i));
        bench.until("a firing", () -> bench.session().results().size() > before);
      }
      // And one that never comes to rest.
      int before = bench.session().results().size();
      box.say("burst +0 knob 16000 250");
      for (int i = 0; i < 3; i++) {
        box.say(String.format(Locale.ROOT, "fire +%.6f fast", 0.7 + i));
      }
      bench.until("three firings", () -> bench.session().results().size() >= before + 3);
      RigMessage.Losses losses =
          bench.driver().workbench().fold().linkStatistics().rigLosses().orElseThrow();
      assertThat(losses.snapshotsLost() + losses.capturesLost() + losses.floods()).isZero();
      assertThat(bench.session().damageBetweenFirings()).isZero();
      log = box.log();
    }
    Session session = SessionReducer.replay(SessionFile.read(file).events()).session();
    List<FiringResult> firings =
        session.results().stream().filter(f -> f.outcome() != Outcome.HELD_FOR_LIGHT).toList();
    assertThat(firings.size()).isEqualTo(15);
    assertThat(firings)
        .allSatisfy(
            firing -> {
              assertThat(firing.outcome()).isEqualTo(Outcome.TIMED);
              assertThat(firing.firing().damage()).isEmpty();
              assertThat(firing.firing().of(Channel.CENTRE_LOW)).hasSize(2);
              assertThat(firing.firing().of(Channel.CENTRE_HIGH)).hasSize(2);
              assertThat(firing.curve()).isPresent();
              assertThat(firing.errorStops().orElseThrow()).isCloseTo(0, within(0.02));
            });
    for (FiringResult firing : firings.subList(0, 12)) {
      List<Edge> knob = firing.firing().knob();
      assertThat(firing.firing().of(Channel.RELEASE)).hasSize(2);
      long opened = firing.firing().of(Channel.CENTRE_LOW).get(0).ticks();
      assertThat(
              knob.stream()
                  .filter(edge -> Math.abs(edge.ticks() - opened) < firing.rate().ticks(0.1))
                  .count())
          .isBetween(1L, 12L);
      for (int i = 1; i < knob.size(); i++) {
        assertThat(knob.get(i).high()).isNotEqualTo(knob.get(i - 1).high());
      }
    }
    long chattered = log.stream().filter(line -> line.matches("edge \\d+ knob .*")).count();
    int kept = firings.stream().mapToInt(f -> f.firing().knob().size()).sum();
    List<Double> off = new ArrayList<>();
    firings.forEach(f -> off.add(Math.abs(f.errorStops().orElseThrow())));
    System.out.printf(
        Locale.ROOT,
        "simulated: a foil that chatters with %d edges through 15 firings: %d are beside them, the"
            + " worst time is %.4f stop off, no edge of another input is lost%n",
        chattered,
        kept,
        off.stream().mapToDouble(Double::doubleValue).max().orElseThrow());
  }
}
