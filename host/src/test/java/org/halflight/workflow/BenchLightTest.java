package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.halflight.bench.LightPlan;
import org.halflight.extratest.LightLeak;
import org.halflight.extratest.StopScale;
import org.halflight.job.CheckState;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.Session;
import org.halflight.session.SessionEvent;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The light is set and tested, by itself and in a run: the test itself holds the lamp, the shutter
 * and the aperture of the practice rig, well or badly. All figures are simulated.
 */
class BenchLightTest {
  @TempDir private Path folder;

  private PracticeBench bench;
  private PracticeRig rig;
  private BenchLight light;
  private final List<LightTestWork> ended = new ArrayList<>();

  @BeforeEach
  void begin() {
    bench = PracticeBench.unpaced(folder);
    rig = bench.rig;
    light = new BenchLight(bench.driver, CameraOperator.PERSON);
    bench.each(
        () -> {
          light.advance();
          light.pollEnded().ifPresent(ended::add);
          bench.news.addAll(light.drainEvents());
        });
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void theLightIsSetInItsStepsAndTheProgressGoesOn() {
    List<Prompt> prompts = new ArrayList<>();
    light.set();
    prompts.add(light.settingPrompt());
    light.answer(Answer.DONE);
    assertThat(light.settingPrompt()).as("not asked yet").isEqualTo(prompts.get(0));
    bench.until("it asks", () -> light.settingPrompt().state() == Prompt.State.ASKING);
    prompts.add(light.settingPrompt());
    rig.holdOpen(true);
    rig.rest(0.5);
    light.answer(Answer.DONE);
    bench.until(
        "it is set",
        () -> {
          prompts.add(light.settingPrompt());
          return light.underWay().isEmpty();
        });

    assertThat(prompts.stream().map(Prompt::sentence).distinct())
        .startsWith(
            Words.say("light.close"),
            Words.say("light.open"),
            Words.say("light.keepOpen"),
            Words.say("light.trips"),
            Words.say("light.thresholds"))
        .hasSize(6)
        .last()
        .asString()
        .startsWith("The light is set");
    assertThat(prompts).extracting(Prompt::progress).isSorted();
    assertThat(light.setting().orElseThrow().isSet()).isTrue();
  }

  @Test
  void aShutterThatStaysShutIsRefusedWithTheReason() {
    light.set();
    bench.until("it asks", () -> light.settingPrompt().state() == Prompt.State.ASKING);
    light.answer(Answer.DONE);
    bench.until("it is over", () -> light.underWay().isEmpty());
    assertThat(light.settingPrompt().sentence())
        .contains("no brighter than the closed one")
        .endsWith("Then set the light again.");
    assertThat(light.setting().orElseThrow().isSet()).isFalse();
  }

  @Test
  void settingTheLightMayBeGivenUpAndBegunAgain() {
    light.set();
    bench.until("it asks", () -> light.settingPrompt().state() == Prompt.State.ASKING);
    light.answer(Answer.STOP);
    assertThat(light.underWay()).isEmpty();
    assertThat(bench.driver.light().isUnderWay()).isFalse();
    assertThat(bench.session().light()).isEmpty();
    setLight();
  }

  @Test
  void eachReadingIsAskedForInItsTurnAndTheProgressIsThroughAllOfThem() {
    setLight();
    light.test(LightPlan.leak());
    List<Double> progress = new ArrayList<>();
    for (int i = 1; i <= 3; i++) {
      assertThat(light.testPrompt().sentence())
          .isEqualTo(LightPlan.leak().steps().get(i - 1).asked());
      assertThat(light.testPrompt().step()).isEqualTo(i);
      rig.cover(i == 1);
      if (i == 3) {
        rig.cock(false);
      }
      light.answer(Answer.DONE);
      assertThat(light.testPrompt().sentence()).isEqualTo(Words.say("lightTest.wait"));
      bench.until(
          "it is read",
          () -> {
            progress.add(light.testPrompt().progress());
            return !isReading();
          });
      if (i < 3) {
        assertThat(light.testPrompt().remark()).startsWith("Read, ");
      }
    }
    assertThat(progress.subList(0, progress.size() - 1)).isSorted().hasSizeGreaterThan(100);
    assertThat(ended.get(0).found()).get().isInstanceOf(LightLeak.class);
    assertThat(ended.get(0).prompt().remark()).startsWith("Read, shut and cocked");
    assertThat(light.testPrompt().sentence()).isEqualTo("The leak test is done: OK.");
  }

  @Test
  void aRunComesToBothSkipsWhatIsSkippedAndGoesOn() {
    setLight();
    begin(List.of(UntimedTest.LEAK, UntimedTest.STOPS, UntimedTest.B), "1/60");
    fire();
    fire();

    bench.until("the leak test has begun", light::isTesting);
    assertThat(session().untimedTest()).contains(UntimedTest.LEAK);
    rig.cover(true);
    read();
    rig.cover(false);
    read();
    rig.cock(false);
    read();

    bench.until("the aperture check has begun", () -> isAt(UntimedTest.STOPS));
    bench.until("it asks", light::isTesting);
    assertThat(light.testPrompt().steps()).isEqualTo(5);
    assertThat(ended.get(0).result().get(0)).contains("Leak test");
    rig.holdOpen(true);
    read();
    for (int i = 2; i <= 5; i++) {
      light.answer(Answer.SKIP);
    }

    bench.until("the run has gone on to B", () -> isAt(UntimedTest.B));
    assertThat(light.isTesting()).isFalse();
    bench.steps(5);
    assertThat(ended.get(1).prompt().sentence()).startsWith("You may let the shutter close.");
    rig.holdOpen(false);
    bench.steps(30);
    assertThat(session().isRunDone()).as("letting go after the check is no B").isFalse();
    rig.holdOpen(true);
    rig.rest(1);
    rig.holdOpen(false);
    bench.until("the run is done", () -> session().isRunDone());
    assertThat(ended.get(0).found().orElseThrow().state()).isEqualTo(CheckState.OK);
    assertThat(ended.get(1).found().orElseThrow().state()).isEqualTo(CheckState.NOT_TESTED);
  }

  @Test
  void aTestThatIsStoppedWaitsForAKeyAndOneThatIsLeftComesRoundAgain() {
    setLight();
    begin(List.of(UntimedTest.LEAK, UntimedTest.B), "1/60");
    fire();
    fire();
    bench.until("the leak test has begun", light::isTesting);

    light.answer(Answer.STOP);
    bench.steps(30);
    assertThat(light.isTesting()).isFalse();
    assertThat(session().untimedTest()).contains(UntimedTest.LEAK);
    assertThat(light.accept()).isTrue();
    bench.until("it has begun again", light::isTesting);

    light.answer(Answer.LEAVE);
    assertThat(light.isTesting()).isFalse();
    assertThat(session().untimedTest()).contains(UntimedTest.B);
    assertThat(light.accept()).as("nothing to accept").isFalse();
    rig.holdOpen(true);
    rig.rest(1);
    rig.holdOpen(false);
    bench.until("it is back", light::isTesting);

    bench.driver.handle(new SessionInput.PreviousChosen());
    bench.until("the run has gone on from it", () -> !light.isTesting());
    bench.driver.handle(new SessionInput.NextChosen());
    bench.until("it is back once more", light::isTesting);
    assertThat(session().isRunDone()).isFalse();
    light.answer(Answer.SKIP);
    bench.until("skipped, it is done", () -> session().isRunDone());
  }

  @Test
  void withoutLightTheRunSaysWhatIsMissingAndGoesOnWhenItIsThere() {
    begin(List.of(UntimedTest.LEAK));
    bench.steps(10);
    assertThat(light.isTesting()).isFalse();
    assertThat(light.testPrompt().sentence()).contains("Set the light first");
    setLight();
    bench.until("it begins by itself", light::isTesting);
  }

  @Test
  void aShutterThatIsNotOpenIsSaidAndAskedForAgain() {
    setLight();
    for (Runnable begins :
        List.<Runnable>of(
            () -> light.stops(List.of("2.8", "4")), () -> light.test(LightPlan.panel()))) {
      begins.run();
      String asked = light.testPrompt().sentence();
      read();

      assertThat(light.testPrompt().step()).isEqualTo(1);
      assertThat(light.testPrompt().remark())
          .startsWith("There is no light: the shutter is not open, or the lamp is off.");
      assertThat(light.testPrompt().sentence()).isEqualTo(asked);

      rig.holdOpen(true);
      read();
      assertThat(light.testPrompt().step()).isEqualTo(2);
      light.answer(Answer.STOP);
      rig.holdOpen(false);
      bench.until("it is shut", () -> session().isQuiet());
    }
  }

  @Test
  void aLightThatMovesIsSaidAndAskedForAgain() {
    setLight();
    light.test(LightPlan.leak());
    light.answer(Answer.DONE);
    for (int i = 0; isReading(); i++) {
      rig.holdOpen(i % 2 == 0);
      bench.steps(100);
    }
    assertThat(light.testPrompt().step()).isEqualTo(1);
    assertThat(light.testPrompt().remark()).isEqualTo(Words.say("lightTest.notStill"));
  }

  @Test
  void whatIsNoStopIsSaid() {
    setLight();
    light.stops(List.of("2.8", "wide"));
    assertThat(light.isTesting()).isFalse();
    assertThat(light.testPrompt().sentence()).startsWith("wide is not an aperture.");
  }

  @Test
  void aShutterThatClosesOnTheWayIsNoVerdict() {
    setLight();
    rig.holdOpen(true);
    bench.until("it is seen", () -> session().seesLight());
    light.stops(List.of("2.8", "4"));
    assertThat(light.testPrompt().sentence()).startsWith("Not now");
    rig.holdOpen(false);
    bench.until("it is shut", () -> session().isQuiet());

    light.stops(List.of("2.8", "4"));
    rig.holdOpen(true);
    read();
    rig.stop(0.5);
    read();
    rig.stop(1);
    rig.holdOpen(false);
    read();

    assertThat(light.testPrompt().sentence())
        .contains("without a verdict: back at f/2.8 there was no light.")
        .contains("Hold the shutter open to the end and read all apertures again.");
  }

  @Test
  void aLampThatMovedBetweenStopsIsNoVerdict() {
    setLight();
    light.stops(List.of("2.8", "4"));
    rig.holdOpen(true);
    read();
    rig.dim(0.8);
    rig.stop(0.5);
    read();
    rig.stop(1);
    read();

    assertThat(light.testPrompt().sentence())
        .contains("without a verdict: back at f/2.8 the light was 0.32 stop darker")
        .endsWith("Read all apertures again.");
    assertThat(ended.get(0).found().orElseThrow().state()).isEqualTo(CheckState.NOT_TESTED);
  }

  @Test
  void thePanelTestLimitsTheFallOfTheLight() {
    setLight();
    light.test(LightPlan.panel());
    rig.holdOpen(true);
    for (double share : new double[] {1, 0.9, 0.9, 1}) {
      rig.stop(share);
      read();
    }
    assertThat(ended.get(0).result().get(0)).startsWith("Light falls by");
    assertThat(light.testPrompt().sentence())
        .startsWith("You may let the shutter close. Light falls by");

    light.test(LightPlan.panel());
    assertThat(light.isTesting()).as("the shutter is open").isFalse();
    rig.holdOpen(false);
    bench.until("it is shut", () -> session().isQuiet());
    light.test(LightPlan.panel());
    light.answer(Answer.STOP);
    assertThat(light.testPrompt().sentence()).contains("not finished");
  }

  @Test
  void fullLightIsReadByOneKeyWhereTheShutterIsHeldOpen() {
    setLight();
    rig.holdOpen(true);
    bench.until("it is seen", () -> session().seesLight());
    light.test(LightPlan.full());
    assertThat(isReading()).isTrue();
    bench.until("it is read", () -> !light.isTesting());
    assertThat(light.testPrompt().sentence())
        .isEqualTo("You may let the shutter close. Full light is 100 % of what was set.");
    rig.holdOpen(false);
    bench.until("it is shut", () -> session().isQuiet());
    bench.steps(30);
    assertThat(session().results()).hasSize(2).allMatch(r -> r.outcome() == Outcome.HELD_FOR_LIGHT);
  }

  @Test
  void fullLightIsAskedForWhereTheShutterIsShutAndOffIsSaid() {
    setLight();
    light.test(LightPlan.full());
    assertThat(light.testPrompt().sentence()).isEqualTo(Words.say("full.ask"));
    read();
    assertThat(light.testPrompt().remark()).startsWith("There is no light");
    rig.dim(0.8);
    rig.holdOpen(true);
    read();
    assertThat(ended.get(0).result()).containsExactly("Full light is 80 % of what was set.");
    assertThat(session().isLightInDoubt()).isTrue();
  }

  @Test
  void fullLightIsNotMeasuredAgainBeforeItWasSet() {
    light.test(LightPlan.full());
    assertThat(light.isTesting()).isFalse();
    assertThat(light.testPrompt().sentence()).contains("Set the light first");
  }

  @Test
  void aShutterThatIsOpenInTheLeakTestIsNoLeak() {
    setLight();
    light.test(LightPlan.leak());
    rig.cover(true);
    read();
    rig.cover(false);
    rig.holdOpen(true);
    read();
    rig.holdOpen(false);
    light.answer(Answer.SKIP);

    assertThat(light.testPrompt().sentence())
        .endsWith(
            "Leak test, shut and not cocked: so much light that the shutter was open. Shut it and"
                + " read again.");
  }

  @Test
  void openingsForTheLightAreNoFirings() {
    setLight();
    light.test(LightPlan.leak());
    assertThat(rig.fire()).isPresent();
    rig.rest(1);
    int before = session().results().size();
    bench.until("it settles", () -> session().results().size() > before);
    light.answer(Answer.STOP);

    assertThat(session().results().stream().map(FiringResult::outcome))
        .hasSize(2)
        .containsOnly(Outcome.HELD_FOR_LIGHT);
  }

  @Test
  void whereTheOperatorAnswersNobodyIsAsked() {
    light = new BenchLight(bench.driver, bench.operator);
    light.set();
    bench.until("the light is set", () -> light.underWay().isEmpty());
    assertThat(session().light()).isPresent();
    bench.until("it is shut", () -> session().isQuiet());
    light.stops(List.of("2.8", "5.6", "11"));
    bench.until("all is read", () -> !light.isTesting());
    StopScale scale = (StopScale) ended.get(0).found().orElseThrow();
    assertThat(scale.trouble()).isEmpty();
    assertThat(scale.stops().get(1).downStops().orElseThrow()).isCloseTo(-2, withinPercentage(2));
    assertThat(bench.news)
        .filteredOn(SessionEvent.Settled.class::isInstance)
        .allMatch(
            settled ->
                ((SessionEvent.Settled) settled).result().outcome() == Outcome.HELD_FOR_LIGHT);
  }

  private boolean isAt(UntimedTest test) {
    return session().untimedTest().equals(Optional.of(test));
  }

  private void read() {
    bench.until("it asks", () -> light.isTesting() && !isReading());
    light.answer(Answer.DONE);
    bench.until("it is read", () -> !isReading());
  }

  private boolean isReading() {
    return light.testPrompt().state() == Prompt.State.WORKING;
  }

  private void setLight() {
    light.set();
    bench.until("it asks", () -> light.settingPrompt().state() == Prompt.State.ASKING);
    rig.holdOpen(true);
    rig.rest(0.5);
    light.answer(Answer.DONE);
    bench.until("the light is set", () -> light.underWay().isEmpty());
    rig.holdOpen(false);
    bench.until("it is shut", () -> session().isQuiet());
  }

  private void begin(List<UntimedTest> tests, String... speeds) {
    bench.driver.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                    "invented camera",
                    Phase.AS_FOUND,
                    "leaf",
                    Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
                    Reference.EXACT,
                    1,
                    tests.toArray(UntimedTest[]::new))
                .withCriteria(
                    AcceptanceCriteria.USUAL
                        .with(RunOption.STOPS, List.of("2.8", "4", "5.6"))
                        .with(RunOption.STOP_TOLERANCE, 0.5))));
  }

  private void fire() {
    int before = session().results().size();
    session().shown().ifPresent(rig::chooseSpeed);
    assertThat(rig.fire()).isPresent();
    bench.until("it settles", () -> session().results().size() > before);
  }

  private Session session() {
    return bench.session();
  }
}
