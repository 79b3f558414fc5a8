package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.halflight.bench.RigCalibration;
import org.halflight.bench.RigCheckRun;
import org.halflight.calibration.ControlLimits;
import org.halflight.calibration.RigCheck;
import org.halflight.profile.InventedProfiles;
import org.halflight.profile.LightRange;
import org.halflight.profile.ProfiledRig;
import org.halflight.rig.RigMessage;
import org.halflight.session.Session;
import org.halflight.session.SessionInput;
import org.halflight.signal.BoardTraits;
import org.halflight.workflow.Answer;
import org.halflight.workflow.Prompt;
import org.junit.jupiter.api.Test;

/** All figures are invented. */
class RigModelTest {
  private final Session session = new Session();
  private final RigModel model = new RigModel();

  @Test
  void aCalibrationSaysWhereItStandsAndItsProgressNeverRunsBack() {
    model.calibrationBegins(0, 120);
    assertThat(view().doing()).isEqualTo(RigView.Doing.CALIBRATING);
    double before = 0;
    double now = 0;
    for (RigCalibration.Stage stage : RigCalibration.Stage.values()) {
      model.stage(stage, now);
      String sentence = view().sentence();
      for (int i = 0; i < 400; i++) {
        now += 0.1;
        model.now(now);
        assertThat(view().progress()).isBetween(before, 1.0);
        before = view().progress();
      }
      assertThat(view().sentence()).isEqualTo(sentence).isNotBlank();
    }
    assertThat(before).isGreaterThan(0.4).isLessThan(0.7);
    now += 80;
    model.now(now);
    assertThat(view().progress()).isCloseTo(1, within(1e-9));
  }

  @Test
  void theWindowHearsOfProgressByTheHundredth() {
    model.checkBegins(10);
    assertThat(model.now(10.01)).isFalse();
    assertThat(model.now(10.1)).isTrue();
    assertThat(model.now(10.11)).isFalse();
  }

  @Test
  void aRigCheckLeavesItsChartAndSaysWhatToDo() {
    model.checkBegins(0);
    double[] shifted = new double[RigCheckRun.PULSES];
    java.util.Arrays.fill(shifted, 5e-6);
    model.checked(RigCheck.of(new ControlLimits(0, 1e-6), shifted), "R-0001");
    assertThat(view().isUnderWay()).as("the rig is not back yet").isTrue();
    model.idle();
    assertThat(view().isUnderWay()).isFalse();
    assertThat(view().sentence()).startsWith("Signal").contains("calibrate");
    assertThat(view().check().orElseThrow().table().rows()).hasSize(RigCheckRun.PULSES);
  }

  @Test
  void whatIsRefusedOrStoppedIsSaidAndNothingGoesOn() {
    model.calibrationBegins(0, 0);
    model.says("You ended it.");
    model.idle();
    assertThat(view().isUnderWay()).isFalse();
    assertThat(view().sentence()).contains("You ended it");
    assertThat(view().fit()).isEmpty();
    assertThat(view().hasProfile()).isFalse();
    assertThat(view().standing()).contains("Not calibrated");
  }

  @Test
  void aRigWithoutReferenceLedIsNotToldToCalibrate() {
    assertThat(ready("full")).contains("calibrate it").contains("cover");
    assertThat(ready("starter")).contains("no reference LED").doesNotContain("cover");
  }

  private String ready(String kind) {
    RigMessage.Greeting greeting =
        new RigMessage.Greeting(0, 1, 16_000_000, kind, 0xC1, "R-0001", 3, "power", "1.3.0", 0);
    return model.view(Optional.of(greeting), session, List.of()).sentence();
  }

  /** A profile to check against, no check yet: said until there was one. */
  @Test
  void theRigCheckIsRemindedOfUntilItIsMade() {
    assertThat(view().checkDue()).isFalse();
    session.handle(new SessionInput.RigIs("R-0001", 1, BoardTraits.USUAL, ""));
    session.handle(
        new SessionInput.ProfileInUse(
            InventedProfiles.bare(
                new ProfiledRig("R-0001", "full", "1.0.0"),
                LocalDate.of(2026, 3, 9),
                new LightRange(20, 700, 900)),
            LocalDate.of(2026, 3, 10),
            OptionalInt.empty()));
    assertThat(view().checkDue()).isTrue();
    assertThat(view().sentence()).startsWith("Rig check not made yet");
    session.handle(new SessionInput.RigChecked("R-0001", true));
    assertThat(view().checkDue()).isFalse();
    assertThat(view().sentence()).doesNotContain("not made yet");
    session.handle(new SessionInput.RigIs("R-0002", 1, BoardTraits.USUAL, ""));
    assertThat(view().checkDue()).as("without a profile there is nothing to check").isFalse();
  }

  @Test
  void theStepsToADiscAreCountedAndItsProgressComesByTheHundredth() {
    assertThat(model.shows(asks("Caution."))).isTrue();
    assertThat(view().isAsking()).isTrue();
    assertThat(view().sentence()).isEqualTo("Caution. Slotted disc, step 1 of 5: Mount it.");
    assertThat(model.shows(asks("Caution."))).as("the window hears of the step once").isFalse();
    assertThat(model.shows(asks(""))).isTrue();
    assertThat(view().sentence()).startsWith("Slotted disc");
    assertThat(model.shows(works(0.2))).isTrue();
    assertThat(view().isAsking()).isFalse();
    assertThat(view().isUnderWay()).isTrue();
    assertThat(model.shows(works(0.205))).isFalse();
    assertThat(model.shows(works(0.215))).isTrue();
    assertThat(view().progress()).isEqualTo(0.215);
  }

  private static Prompt asks(String remark) {
    return new Prompt(Prompt.State.ASKING, "Mount it.", remark, 1, 5, 0, Set.of(Answer.DONE));
  }

  private static Prompt works(double progress) {
    return new Prompt(Prompt.State.WORKING, "Edges.", "", 0, 0, progress, Set.of(Answer.STOP));
  }

  private RigView view() {
    return model.view(Optional.empty(), session, List.of());
  }
}
