package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import org.halflight.bench.PumpFeed;
import org.halflight.bench.RigWork;
import org.halflight.calibration.PrintedDisc;
import org.halflight.profile.ClockRate;
import org.halflight.rig.practice.PracticeRig;
import org.halflight.shuttermodel.InventedShutters;
import org.halflight.shuttermodel.SensorSet;
import org.halflight.shuttermodel.TurningDisc;
import org.halflight.uncertainty.DiscComparison;
import org.halflight.words.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A person is led to a disc before the practice rig; all figures are simulated. */
class DiscReadingWorkTest {
  private static final DiscSetup SETUP =
      new DiscSetup(
          new PrintedDisc(PrintedDisc.SLOT_DEGREES, 0.1, 63),
          4,
          OptionalDouble.of(600),
          DiscSetup.TACHOMETER_PPM);
  private static final TurningDisc DISC = TurningDisc.invented(7);

  private final PracticeRig rig =
      PracticeRig.unpaced(
          InventedShutters.soundLeaf(InventedShutters.dial(), 3), SensorSet.INVENTED, 3);
  private final RigWork work = new RigWork(new PumpFeed(rig, () -> 0));
  private final List<Prompt> shown = new ArrayList<>();

  @AfterEach
  void close() {
    work.close();
  }

  @Test
  void theCautionComesFirstThenFiveStepsTheReadingAndTheMotorOff() {
    DiscReadingWork reading = begin(Optional.empty());
    assertThat(reading.prompt().remark()).isEqualTo(Words.say("disc.caution"));
    for (int step = 1; step <= 5; step++) {
      assertThat(reading.prompt().state()).isEqualTo(Prompt.State.ASKING);
      assertThat(reading.prompt().step()).isEqualTo(step);
      assertThat(reading.advance()).as("nothing goes on without the person").isFalse();
      reading.answer(Answer.SKIP);
      assertThat(reading.prompt().step()).as("no step is skipped").isEqualTo(step);
      reading.answer(Answer.DONE);
    }
    rig.turnDisc(DISC);
    reading.advance();
    assertThat(reading.prompt().sentence()).isEqualTo(Words.say("disc.off"));
    assertThat(reading.prompt().remark()).contains("agrees");
    assertThat(reading.prompt().state()).isEqualTo(Prompt.State.ASKING);
    reading.answer(Answer.DONE);
    assertThat(reading.prompt().state()).isEqualTo(Prompt.State.OVER);
    assertThat(reading.prompt().sentence()).endsWith(Words.say("disc.over"));

    DiscFinding finding = reading.finding().orElseThrow();
    assertThat(finding.comparison().verdict()).isNotEqualTo(DiscComparison.Verdict.DISAGREES);
    assertThat(finding.clock().orElseThrow().source()).isEqualTo(ClockRate.Source.DISC);
    assertThat(finding.brief()).contains(finding.clockSaid().orElseThrow());
    assertThat(DiscFinding.of(reading.edges().orElseThrow(), finding.profile(), SETUP))
        .isEqualTo(finding);
  }

  @Test
  void everyStageIsShownAndTheProgressNeverRunsBack() {
    DiscReadingWork reading = begin(Optional.of(this::turn));
    work.meanwhile(() -> shown.add(reading.prompt()));
    lead(reading);
    assertThat(shown.stream().map(Prompt::sentence))
        .contains(
            Words.say("disc.stage.light"),
            Words.say("disc.stage.levels"),
            Words.say("disc.stage.edges"));
    for (int i = 1; i < shown.size(); i++) {
      assertThat(shown.get(i).progress()).isBetween(shown.get(i - 1).progress(), 1.0);
    }
    assertThat(shown.stream().mapToDouble(Prompt::progress).distinct().count()).isGreaterThan(100);
    assertThat(reading.prompt().state())
        .as("nobody switches an invented motor off")
        .isEqualTo(Prompt.State.OVER);
    assertThat(reading.finding()).isPresent();
  }

  @Test
  void whoStopsBeforeTheMotorRunsIsAskedNothingMore() {
    DiscReadingWork reading = begin(Optional.empty());
    reading.answer(Answer.DONE);
    reading.answer(Answer.STOP);
    assertThat(reading.prompt().state()).isEqualTo(Prompt.State.OVER);
    assertThat(reading.prompt().sentence()).isEqualTo(Words.say("calibration.refused.stopped"));
    assertThat(reading.edges()).isEmpty();
  }

  @Test
  void whoStopsWithTheMotorOnIsToldToSwitchItOff() {
    DiscReadingWork asked = begin(Optional.empty());
    for (int step = 1; step < 5; step++) {
      asked.answer(Answer.DONE);
    }
    // As when the program is ended from outside.
    work.stop();
    asked.advance();
    assertThat(asked.prompt().sentence()).isEqualTo(Words.say("disc.off"));
    asked.advance();
    assertThat(asked.prompt().state()).isEqualTo(Prompt.State.ASKING);
    asked.answer(Answer.STOP);
    assertThat(asked.prompt().state()).isEqualTo(Prompt.State.OVER);
  }

  @Test
  void aReadingIsStoppedInItsMiddle() {
    DiscReadingWork reading = begin(Optional.of(this::turn));
    work.meanwhile(
        () -> {
          if (reading.prompt().sentence().equals(Words.say("disc.stage.edges"))) {
            reading.answer(Answer.STOP);
          }
        });
    lead(reading);
    assertThat(reading.came()).isEqualTo(Words.say("calibration.refused.stopped"));
    assertThat(reading.edges()).isEmpty();
  }

  @Test
  void whatCannotBeReadIsSaidWithWhatToDo() {
    DiscReadingWork still = begin(Optional.of(on -> {}));
    lead(still);
    assertThat(still.came()).isEqualTo(Words.say("disc.trouble.still"));
    assertThat(still.edges()).isEmpty();
  }

  /** A motor that is still gaining speed by a thousandth with each turn. */
  @Test
  void aSpeedThatWandersIsReadAgainAndInTheEndKeptWithWhyItSaysNothing() {
    TurningDisc runsUp =
        new TurningDisc(DISC.openDegrees(), DISC.closeDegrees(), 10, 2e-3, 0, 0.1, 0, 63, 2.8, 1);
    DiscReadingWork reading =
        begin(
            Optional.of(
                on -> {
                  if (on) {
                    rig.turnDisc(runsUp);
                  } else {
                    rig.stopDisc();
                  }
                }));
    work.meanwhile(() -> shown.add(reading.prompt()));
    lead(reading);
    assertThat(shown.stream().map(Prompt::remark)).anyMatch(said -> said.endsWith("once more."));
    assertThat(reading.came()).startsWith("The speed is not even");
    assertThat(reading.finding()).isEmpty();
    assertThat(reading.edges().orElseThrow().edges()).isNotEmpty();
  }

  private DiscReadingWork begin(Optional<Consumer<Boolean>> model) {
    CameraOperator operator =
        new CameraOperator() {
          @Override
          public boolean works() {
            return model.isPresent();
          }

          @Override
          public void turnDisc(boolean turns) {
            model.ifPresent(its -> its.accept(turns));
          }
        };
    while (work.greeting().isEmpty()) {
      work.step();
    }
    return new DiscReadingWork(
        work,
        SETUP,
        new DiscProfile(Optional.empty(), LocalDate.EPOCH, OptionalInt.empty()),
        operator);
  }

  private void turn(boolean on) {
    if (on) {
      rig.turnDisc(DISC);
    } else {
      rig.stopDisc();
    }
  }

  private static void lead(DiscReadingWork reading) {
    while (reading.prompt().state() != Prompt.State.OVER) {
      reading.answer(Answer.DONE);
      reading.advance();
    }
  }
}
