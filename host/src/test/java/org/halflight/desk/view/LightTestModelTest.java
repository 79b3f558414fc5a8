package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.halflight.bench.LightPlan;
import org.halflight.session.LightReading;
import org.halflight.words.Words;
import org.junit.jupiter.api.Test;

/** All figures are invented. */
class LightTestModelTest {
  private final LightTestModel model = new LightTestModel();

  @Test
  void eachReadingIsAskedForInItsTurnAndTheProgressIsThroughAllOfThem() {
    LightPlan plan = LightPlan.leak();
    model.begins(plan);
    for (int i = 0; i < plan.steps().size(); i++) {
      assertThat(model.view().doing()).isEqualTo(LightTestView.Doing.ASKING);
      assertThat(model.view().sentence()).isEqualTo(plan.steps().get(i).asked());
      assertThat(model.view().step()).isEqualTo(i + 1);
      model.reads();
      model.progress(0.5);
      assertThat(model.view().doing()).isEqualTo(LightTestView.Doing.READING);
      assertThat(model.view().progress()).isCloseTo((i + 0.5) / 3, within(1e-9));
      assertThat(model.wasRead("read " + i)).isEqualTo(i < 2);
      if (i < 2) {
        assertThat(model.view().remark()).isEqualTo("read " + i);
      }
    }
  }

  @Test
  void whatWentWrongIsSaidAndTheSameIsAskedAgain() {
    model.begins(LightPlan.leak());
    model.reads();
    model.again("not still");
    assertThat(model.view().doing()).isEqualTo(LightTestView.Doing.ASKING);
    assertThat(model.view().step()).isEqualTo(1);
    assertThat(model.view().sentence()).isEqualTo(Words.say("leak.ask.covered"));
    assertThat(model.view().remark()).isEqualTo("not still");
  }

  @Test
  void aReadingMayBeSkippedAndTheOneThatAllHangsOnEndsTheTest() {
    model.begins(LightPlan.leak());
    assertThat(model.skipped()).isFalse();
    model.begins(LightPlan.leak());
    model.wasRead("covered");
    assertThat(model.skipped()).isTrue();
    assertThat(model.view().sentence()).isEqualTo(Words.say("leak.ask.cocked"));
    assertThat(model.skipped()).as("the last").isFalse();
  }

  @Test
  void atItsEndStandsWhatItCameToAndNotWhatAnEarlierOneDid() {
    List<LightReading> readings =
        List.of(
            LightReading.of(LightReading.What.LAMP_COVERED, "", false, 20, 0.3, 1000, 1),
            LightReading.of(LightReading.What.SHUT_COCKED, "", false, 40, 0.3, 1000, 2));
    model.begins(LightPlan.leak());
    model.wasRead("covered");
    model.ends(readings, List.of(), 0);
    assertThat(model.view().isUnderWay()).isFalse();
    assertThat(model.view().sentence()).contains("leak test is done: fault");
    model.begins(LightPlan.leak());
    model.ends(readings, List.of(), 0);
    assertThat(model.view().sentence()).isEqualTo(Words.say("desk.tried.nothingRead"));
  }
}
