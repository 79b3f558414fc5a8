package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.halflight.bench.BenchEvent;
import org.halflight.bench.ScreenCheck;
import org.halflight.bench.SessionFile;
import org.halflight.bench.SessionReducer;
import org.halflight.light.Aim;
import org.halflight.light.Aim.Lamp;
import org.halflight.light.Aim.Move;
import org.halflight.light.Aim.State;
import org.halflight.light.ScreenLight;
import org.halflight.rig.LineCodec;
import org.halflight.rig.ParsedLine;
import org.halflight.rig.RigMessage;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.shuttermodel.InventedLamp;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The light is aimed on the practice rig, as it is in the window. All figures are simulated. */
class AimingTest {
  @TempDir private Path folder;

  private PracticeBench bench;
  private BenchLight light;
  private boolean windowPaints = true;
  private final List<String> said = new ArrayList<>();

  @BeforeEach
  void begin() {
    bench = PracticeBench.paced(folder);
    light = new BenchLight(bench.driver, bench.operator);
    int[] heard = new int[1];
    bench.each(
        () -> {
          light.advance();
          light
              .screen()
              .filter(its -> windowPaints && !its.isOver())
              .ifPresent(its -> light.screenIsPainted(its.turn()));
          for (; heard[0] < bench.news.size(); heard[0]++) {
            light.ofOpening(bench.news.get(heard[0])).ifPresent(said::add);
          }
        });
  }

  @AfterEach
  void end() {
    bench.close();
  }

  @Test
  void fromTheFirstReadingToALightThatIsSet() {
    bench.operator.placeLamp(0.4);
    light.showMeter(true);
    moves(Move.OPEN);
    bench.operator.hold(true);
    moves(Move.A_LITTLE_CLOSER);
    for (int i = 0; i < 7; i++) {
      bench.operator.moveLamp(true);
    }
    moves(Move.FURTHER);
    bench.operator.moveLamp(false);
    bench.operator.moveLamp(false);
    moves(Move.SET);
    Aim aim = light.meter().orElseThrow();
    assertThat(aim.needles()).extracting(its -> its.sensor()).hasSize(3);
    assertThat(aim.lamps()).containsValues(State.GOOD).doesNotContainValue(State.BAD);
    assertThat(aim.lamps()).doesNotContainValue(State.UNKNOWN);

    light.set();
    assertThat(light.isAiming()).isFalse();
    bench.until("it asks", () -> light.settingPrompt().state() == Prompt.State.ASKING);
    assertThat(light.meter()).as("the meter goes on in the steps").isPresent();
    light.answer(Answer.DONE);
    bench.until("it is set", () -> light.underWay().isEmpty() && bench.session().isQuiet());
    assertThat(light.setting().orElseThrow().isSet()).isTrue();
    bench.steps(200);
    assertThat(light.isAiming()).as("set light is left alone").isFalse();
    assertThat(light.meter().orElseThrow().centre().orElseThrow().counts())
        .as("the meter follows the beats")
        .isLessThan(20);
  }

  @Test
  void everyFaultOfTheLightIsSaid() {
    light.showMeter(true);
    moves(Move.OPEN);
    bench.operator.hold(true);
    moves(Move.SET);
    bench.operator.useLamp(InventedLamp.FLICKERING);
    moves(Move.OTHER_LAMP);
    assertThat(light.meter().orElseThrow().of(Lamp.FLICKER)).isEqualTo(State.BAD);
    bench.operator.useLamp(InventedLamp.WANDERING);
    moves(Move.HOLD_STILL);
    bench.operator.useLamp(InventedLamp.GOOD);
    moves(Move.SET);
    bench.operator.placeLamp(1.4);
    moves(Move.FURTHER);
    bench.operator.placeLamp(0.1);
    moves(Move.CLOSER);
    bench.operator.placeLamp(0.8);
    moves(Move.SET);
    bench.operator.lightRoom(true);
    moves(Move.HOLD_STILL);
    moves(Move.SET);
    bench.operator.hold(false);
    moves(Move.SHADE);
    bench.operator.lightRoom(false);
    moves(Move.OPEN);
    assertThat(light.meter().orElseThrow().of(Lamp.STRAY)).isEqualTo(State.GOOD);
  }

  @Test
  void theScreenIsSeenOrNot() {
    light.showMeter(true);
    moves(Move.OPEN);
    bench.operator.turnScreen(true);
    assertThat(screen().finding()).isEqualTo(ScreenLight.Finding.REACHES);
    assertThat(screen().share()).isBetween(0.015, 0.025);
    bench.operator.turnScreen(false);
    assertThat(screen().finding()).isEqualTo(ScreenLight.Finding.DOES_NOT);
  }

  @Test
  void aScreenThatIsNotPaintedYetIsWaitedFor() {
    windowPaints = false;
    light.showMeter(true);
    moves(Move.OPEN);
    light.checkScreen();
    bench.steps(500);
    assertThat(light.screen().map(ScreenCheck::turn)).contains(0);
  }

  private ScreenLight screen() {
    light.checkScreen();
    bench.until(
        "the screen is checked", () -> light.screen().filter(ScreenCheck::isOver).isPresent());
    return light.screen().flatMap(ScreenCheck::result).orElseThrow();
  }

  @Test
  void aFiringWhileAimingIsSaidToBeNone() {
    light.showMeter(true);
    moves(Move.OPEN);
    bench.operator.press(Optional.empty());
    bench.until("the opening is over", () -> !bench.session().results().isEmpty());
    bench.steps(1);
    assertThat(said).containsExactly(Words.say("aim.notMeasured"));
    assertThat(bench.session().results())
        .allMatch(opening -> opening.outcome() == Outcome.HELD_FOR_LIGHT);

    light.showMeter(false);
    bench.until("the rig is free", () -> bench.driver.isFree());
    bench.operator.press(Optional.empty());
    bench.until("the firing is over", () -> bench.session().results().size() == 2);
    assertThat(bench.session().results().get(1).outcome()).isNotEqualTo(Outcome.HELD_FOR_LIGHT);
    assertThat(bench.session().results().get(1).sampledLight())
        .as("the converter is back at the light curve")
        .isPresent();
    assertThat(said).hasSize(1);
  }

  @Test
  void heldOpenForTheLightNothingIsSaid() {
    light.showMeter(true);
    moves(Move.OPEN);
    bench.operator.hold(true);
    moves(Move.SET);
    long beats = beats();
    bench.until("two seconds", () -> beats() - beats >= 8);
    bench.operator.hold(false);
    bench.until("the opening is over", () -> !bench.session().results().isEmpty());
    bench.steps(1);
    assertThat(said).isEmpty();
  }

  @Test
  void linesOfTheMeterAreNotInTheFileAndNoneIsMissedInIt() throws Exception {
    light.showMeter(true);
    moves(Move.OPEN);
    long before = Files.size(path());
    long beats = beats();
    bench.operator.hold(true);
    moves(Move.SET);
    bench.until("four seconds", () -> beats() - beats >= 16);
    long bytes = Files.size(path()) - before;
    // A beat with its mark is 130 bytes or so; the meter's own lines are 60 times as many.
    assertThat(bytes).isLessThan(200 * (beats() - beats) + 2000);
    light.showMeter(false);
    bench.operator.hold(false);
    bench.until("the rig is free", () -> bench.driver.isFree());
    bench.operator.press(Optional.empty());
    bench.until("the firing is over", () -> bench.session().results().size() == 2);

    SessionReducer replayed = SessionReducer.replay(SessionFile.read(path()).events());
    assertThat(replayed.linkStatistics().missing()).isZero();
    assertThat(replayed.damagedMarks() + replayed.unknownMarks()).isZero();
    assertThat(replayed.session().results()).isEqualTo(bench.session().results());
    assertThat(events().filter(AimingTest::isBlock).count()).isLessThan(60);
  }

  private Stream<BenchEvent> events() {
    return SessionFile.read(path()).events().stream();
  }

  private static boolean isBlock(BenchEvent event) {
    return event instanceof BenchEvent.Received received
        && LineCodec.parse(received.line()) instanceof ParsedLine.Message found
        && found.message() instanceof RigMessage.LightBlock;
  }

  private long beats() {
    return events()
        .filter(BenchEvent.Received.class::isInstance)
        .filter(event -> ((BenchEvent.Received) event).line().startsWith("B "))
        .count();
  }

  @Test
  void inARunTheLightIsAimedOnlyIfThePersonWantsIt() {
    bench.driver.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented camera",
                Phase.AS_FOUND,
                "leaf",
                List.of(MarkedSpeed.parse("1/125")),
                Reference.EXACT,
                1)));
    light.showMeter(true);
    bench.steps(100);
    assertThat(light.isAiming()).isFalse();
    assertThat(light.meter().orElseThrow().centre()).as("beats move the needle").isPresent();
    light.aim();
    moves(Move.OPEN);
    assertThat(light.isAiming()).isTrue();
    light.showMeter(false);
    assertThat(light.isAiming()).isFalse();
  }

  private Path path() {
    return bench.driver.workbench().path();
  }

  private void moves(Move wanted) {
    try {
      bench.until(
          "the next thing is " + wanted,
          () -> light.isAiming() && light.meter().map(Aim::move).equals(Optional.of(wanted)));
    } catch (AssertionError never) {
      throw new AssertionError(never.getMessage() + "; it is " + light.meter(), never);
    }
  }
}
