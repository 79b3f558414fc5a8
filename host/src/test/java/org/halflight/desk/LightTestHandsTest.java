package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import org.halflight.bench.BenchDriver;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.LightSetting;
import org.halflight.bench.Marks;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.SessionFile;
import org.halflight.bench.Workbench;
import org.halflight.desk.view.BenchModel;
import org.halflight.desk.view.ExtraTestsText;
import org.halflight.desk.view.KeyHints;
import org.halflight.desk.view.LightTestView;
import org.halflight.desk.view.MessageText;
import org.halflight.desk.view.NextText;
import org.halflight.desk.view.NumeralsText;
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
import org.halflight.session.Source;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Tests of the light as the window leads through them, in virtual time and without a window: the
 * test itself holds the lamp, the shutter and the stop of the practice rig, well or badly. All
 * figures are simulated.
 */
class LightTestHandsTest {
  private static final int PATIENCE = 2_000;

  @TempDir private Path folder;

  private PracticeRig rig;
  private Workbench workbench;
  private BenchDriver driver;
  private BenchModel model;
  private LightTestHands hands;

  @BeforeEach
  void begin() {
    rig =
        PracticeRig.unpaced(
            InventedShutters.soundLeaf(InventedShutters.dial(), 7), SensorSet.IDEAL, 7);
    AtomicLong nanos = new AtomicLong();
    workbench =
        Workbench.begin(
            SessionFile.create(folder.resolve("work.session")),
            nanos::incrementAndGet,
            new BenchEvent.Mark(0, Marks.BEGINS, Map.of()));
    driver = new BenchDriver(workbench, new PumpFeed(rig, workbench::now));
    model = new BenchModel(driver, Source.PRACTICE);
    hands =
        new LightTestHands(
            driver,
            model.lightTest(),
            Optional.empty(),
            () -> session().isQuiet() && !driver.isSettingLight());
    until("the rig answers", () -> workbench.fold().greeting().isPresent());
  }

  @Test
  void aRunComesToBothSkipsWhatIsSkippedAndGoesOn() {
    setLight();
    begin(List.of(UntimedTest.LEAK, UntimedTest.STOPS, UntimedTest.B), "1/60");
    fire();
    fire();

    until("the leak test has begun", hands::isUnderWay);
    assertThat(session().untimedTest()).contains(UntimedTest.LEAK);
    assertThat(NextText.of(model.view()).large()).isEqualTo("leak test");
    assertThat(NumeralsText.of(model.view()).large())
        .isEqualTo(Words.say("desk.test.lamp-covered"));
    assertThat(MessageText.of(model.view()).text()).isEqualTo(Words.say("leak.ask.covered"));
    assertThat(
            KeyHints.of(model.view()).stream().filter(KeyHints.Hint::answers).map(h -> h.words()))
        .containsExactly(Words.say("desk.key.accept.read"));
    rig.cover(true);
    read();
    rig.cover(false);
    read();
    rig.cock(false);
    read();

    until(
        "the aperture check has begun",
        () -> session().untimedTest().equals(Optional.of(UntimedTest.STOPS)));
    until("it asks", hands::isUnderWay);
    assertThat(NextText.of(model.view()).count()).isEqualTo("Reading 1 of 5");
    assertThat(model.view().said().orElseThrow().text()).contains("Leak test");
    rig.holdOpen(true);
    read();
    for (int i = 2; i <= 5; i++) {
      hands.skip();
    }

    until(
        "the run has gone on to B",
        () -> session().untimedTest().equals(Optional.of(UntimedTest.B)));
    assertThat(hands.isUnderWay()).isFalse();
    idle(5);
    assertThat(model.view().said().orElseThrow().text()).startsWith("You may let the shutter");
    rig.holdOpen(false);
    idle(30);
    assertThat(session().isRunDone()).as("letting go after the check is no B").isFalse();
    rig.holdOpen(true);
    rig.rest(1);
    rig.holdOpen(false);
    until("the run is done", () -> session().isRunDone());
    assertThat(
            ExtraTestsText.of(model.view()).entries().stream().map(ExtraTestsText.Entry::headline))
        .anyMatch(line -> line.contains("leak test: OK"))
        .anyMatch(line -> line.contains("aperture check: not tested"));
  }

  @Test
  void aTestThatIsStoppedWaitsForAKeyAndOneThatIsLeftComesRoundAgain() {
    setLight();
    begin(List.of(UntimedTest.LEAK, UntimedTest.B), "1/60");
    fire();
    fire();
    until("the leak test has begun", hands::isUnderWay);

    hands.stop();
    idle(30);
    assertThat(hands.isUnderWay()).isFalse();
    assertThat(session().untimedTest()).contains(UntimedTest.LEAK);
    assertThat(MessageText.of(model.view()).text()).contains("Space begins the readings");
    assertThat(hands.accept()).isTrue();
    until("it has begun again", hands::isUnderWay);

    driver.handle(new SessionInput.NextChosen());
    until("it is left", () -> !hands.isUnderWay());
    assertThat(session().untimedTest()).contains(UntimedTest.B);
    assertThat(hands.accept()).as("nothing to accept").isFalse();
    rig.holdOpen(true);
    rig.rest(1);
    rig.holdOpen(false);
    until("it is back", hands::isUnderWay);
    assertThat(session().isRunDone()).isFalse();
    hands.skip();
    until("skipped, it is done", () -> session().isRunDone());
  }

  @Test
  void withoutLightTheRunSaysWhatIsMissingAndGoesOnWhenItIsThere() {
    begin(List.of(UntimedTest.LEAK));
    idle(10);
    assertThat(hands.isUnderWay()).isFalse();
    assertThat(MessageText.of(model.view()).text()).contains("Set the light first");
    setLight();
    until("it begins by itself", hands::isUnderWay);
  }

  @Test
  void aShutterThatIsNotOpenIsSaidAndAskedForAgain() {
    setLight();
    hands.stops(List.of("2.8", "4"));
    read();

    assertThat(model.view().lightTest().step()).isEqualTo(1);
    assertThat(MessageText.of(model.view()).text())
        .startsWith("There is no light: the shutter is not open, or the lamp is off.")
        .endsWith(Words.say("stops.ask.first", "2.8"));

    rig.holdOpen(true);
    read();
    assertThat(model.view().lightTest().step()).isEqualTo(2);
  }

  @Test
  void aShutterThatClosesOnTheWayIsNoVerdict() {
    setLight();
    rig.holdOpen(true);
    hands.stops(List.of("2.8", "4"));
    read();
    rig.stop(0.5);
    read();
    rig.stop(1);
    rig.holdOpen(false);
    read();

    assertThat(model.view().lightTest().sentence())
        .startsWith("Aperture check without a verdict: back at f/2.8 there was no light.")
        .contains("Hold the shutter open to the end and read all stops again.");
  }

  @Test
  void aLampThatMovedBetweenStopsIsNoVerdict() {
    setLight();
    rig.holdOpen(true);
    hands.stops(List.of("2.8", "4"));
    read();
    rig.dim(0.8);
    rig.stop(0.5);
    read();
    rig.stop(1);
    read();

    assertThat(model.view().lightTest().sentence())
        .startsWith(
            "Aperture check without a verdict: back at f/2.8 the light was 0.32 stop darker")
        .endsWith("Read all stops again.");
    assertThat(ExtraTestsText.of(model.view()).entries().get(0).headline()).contains("not tested");
  }

  @Test
  void fullLightIsReadByOneKeyWhereTheShutterIsHeldOpen() {
    setLight();
    rig.holdOpen(true);
    until("it is seen", () -> session().seesLight());
    hands.fullLight();
    assertThat(isReading()).isTrue();
    until("it is read", () -> !hands.isUnderWay());
    idle(1);
    assertThat(model.view().said().orElseThrow().text())
        .isEqualTo("You may let the shutter close. Full light is 100 % of what was set.");
    rig.holdOpen(false);
    until("it is shut", () -> session().isQuiet());
    idle(30);
    assertThat(session().results()).hasSize(2).allMatch(r -> r.outcome() == Outcome.HELD_FOR_LIGHT);
  }

  @Test
  void fullLightIsAskedForWhereTheShutterIsShutAndOffIsSaid() {
    setLight();
    hands.fullLight();
    assertThat(MessageText.of(model.view()).text()).isEqualTo(Words.say("full.ask"));
    assertThat(NumeralsText.of(model.view()).large()).isEqualTo("hold it open");
    read();
    assertThat(MessageText.of(model.view()).text()).startsWith("There is no light");
    rig.dim(0.8);
    rig.holdOpen(true);
    read();
    idle(1);
    assertThat(model.view().said().orElseThrow().text()).contains("Full light is 80 %");
    assertThat(session().isLightInDoubt()).isTrue();
  }

  @Test
  void fullLightIsNotMeasuredAgainBeforeItWasSet() {
    hands.fullLight();
    assertThat(hands.isUnderWay()).isFalse();
    idle(1);
    assertThat(model.view().said().orElseThrow().text()).contains("Set the light first");
  }

  @Test
  void aShutterThatIsOpenInTheLeakTestIsNoLeak() {
    setLight();
    hands.leak();
    rig.cover(true);
    read();
    rig.cover(false);
    rig.holdOpen(true);
    read();
    rig.holdOpen(false);
    hands.skip();

    assertThat(model.view().lightTest().sentence())
        .isEqualTo(
            "Leak test, shut and not cocked: so much light that the shutter was open. Shut it and"
                + " read again.");
  }

  @Test
  void openingsForTheLightAreNoFirings() {
    setLight();
    hands.leak();
    assertThat(rig.fire()).isPresent();
    rig.rest(1);
    int before = session().results().size();
    until("it settles", () -> session().results().size() > before);
    hands.stop();

    assertThat(session().results().stream().map(FiringResult::outcome))
        .hasSize(2)
        .containsOnly(Outcome.HELD_FOR_LIGHT);
  }

  private void read() {
    until("it asks", () -> hands.isUnderWay() && !isReading());
    hands.done();
    until("it is read", () -> !isReading());
  }

  private boolean isReading() {
    return model.view().lightTest().doing() == LightTestView.Doing.READING;
  }

  private void setLight() {
    LightSetting setting = driver.setLight();
    until("open", () -> setting.step() == LightSetting.Step.OPEN_THE_SHUTTER);
    rig.holdOpen(true);
    rig.rest(0.5);
    driver.shutterIsOpen();
    until("the light is set", () -> session().light().isPresent());
    rig.holdOpen(false);
    until("it is shut", () -> session().isQuiet());
  }

  private void begin(List<UntimedTest> checks, String... speeds) {
    AcceptanceCriteria usual = AcceptanceCriteria.USUAL;
    tell(
        driver.handle(
            new SessionInput.RunBegins(
                new RunSetup(
                        "invented camera",
                        Phase.AS_FOUND,
                        "leaf",
                        Arrays.stream(speeds).map(MarkedSpeed::parse).toList(),
                        Reference.EXACT,
                        1,
                        checks.toArray(UntimedTest[]::new))
                    .withCriteria(
                        usual
                            .with(RunOption.STOPS, List.of("2.8", "4", "5.6"))
                            .with(RunOption.STOP_TOLERANCE, 0.5)))));
  }

  private void fire() {
    int before = session().results().size();
    session().shown().ifPresent(rig::chooseSpeed);
    assertThat(rig.fire()).isPresent();
    until("it settles", () -> session().results().size() > before);
  }

  private void idle(int steps) {
    for (int i = 0; i < steps; i++) {
      step();
    }
  }

  private void until(String what, BooleanSupplier condition) {
    for (int i = 0; i < PATIENCE; i++) {
      if (condition.getAsBoolean()) {
        return;
      }
      step();
    }
    throw new AssertionError("waited in vain until " + what + ": " + model.view().lightTest());
  }

  private void step() {
    List<SessionEvent> news = new ArrayList<>();
    Optional<BenchDriver.Happening> happened = driver.step();
    happened.ifPresent(its -> news.addAll(its.news()));
    if (happened.isEmpty()) {
      rig.rest(0.05);
    }
    tell(news);
    hands
        .goesOn()
        .ifPresent(
            told -> {
              tell(told);
              hands.found().ifPresent(model::say);
            });
  }

  private void tell(List<SessionEvent> news) {
    assertThat(model.news(news)).isNotNull();
  }

  private Session session() {
    return workbench.fold().session();
  }
}
