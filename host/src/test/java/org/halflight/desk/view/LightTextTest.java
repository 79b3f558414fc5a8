package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.halflight.light.Aim;
import org.halflight.rig.practice.PracticeMishap;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the Light place says, on the practice rig. All figures are simulated. */
class LightTextTest {
  private PracticeWork work;

  @BeforeEach
  void begin(@TempDir Path folder) {
    work = new PracticeWork(folder);
  }

  @AfterEach
  void end() {
    work.close();
  }

  @Test
  void theNextThingToMoveThenTheStepsThenWhatComesNext() {
    assertThat(text().sentence()).isEqualTo(Words.say("light.notSet"));
    work.light.showMeter(true);
    aims(Aim.Move.OPEN);
    assertThat(text().sentence()).isEqualTo(Words.say("aim.move.open"));
    assertThat(text().mode()).isEqualTo(Words.say("desk.light.mode.aims"));
    assertThat(text().mayAim()).as("it is aimed already").isFalse();
    assertThat(text().maySet()).isTrue();

    work.light.set();
    assertThat(text().mode()).isEqualTo(Words.say("desk.light.mode.sets"));
    assertThat(text().maySet() || text().mayAim() || text().mayCheckScreen()).isFalse();
    work.until(() -> work.view().light().isAsking());
    assertThat(text().sentence()).endsWith("Then press Space.");
    work.light.answer(Answer.DONE);
    work.until(() -> work.view().light().isAiming());
    aims(Aim.Move.OPEN);
    assertThat(text().remarks().get(0)).as("it stayed shut").contains("no brighter");
    assertThat(text().sentence()).isEqualTo(Words.say("aim.move.open"));

    work.light.set();
    work.until(() -> work.view().light().isAsking());
    work.rig.holdOpen(true);
    work.rig.rest(0.5);
    work.light.answer(Answer.DONE);
    work.until(() -> work.view().light().set().isPresent());
    assertThat(text().sentence()).isEqualTo("Light set. Next: name the camera (F4) or fire.");
    work.model.named("invented", Dial.builtIn().get(0));
    assertThat(text().sentence()).isEqualTo("Light set. Next: fire.");
    assertThat(text().mode()).isEqualTo(Words.say("desk.light.mode.watches"));
    assertThat(text().mayAim()).isTrue();
  }

  @Test
  void aFiringWhileAimingHasItsSentence() {
    work.light.showMeter(true);
    aims(Aim.Move.OPEN);
    work.fire(Optional.of(MarkedSpeed.parse("1/60")), PracticeMishap.NONE);
    assertThat(work.view().said().orElseThrow().text()).isEqualTo(Words.say("aim.notMeasured"));
  }

  private LightText text() {
    return LightText.of(work.view());
  }

  private void aims(Aim.Move move) {
    work.until(() -> work.view().light().aim().filter(its -> its.move() == move).isPresent());
  }
}
