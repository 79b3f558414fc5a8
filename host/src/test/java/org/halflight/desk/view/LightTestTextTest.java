package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.halflight.bench.LightPlan;
import org.halflight.session.Phase;
import org.halflight.session.RunSetup;
import org.halflight.session.SessionInput;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Reference;
import org.halflight.words.Words;
import org.halflight.workflow.Answer;
import org.halflight.workflow.Prompt;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the bench shows of a light test. All figures are invented. */
class LightTestTextTest {
  private PracticeWork work;

  @BeforeEach
  void begin(@TempDir Path folder) {
    work = new PracticeWork(folder);
    work.light.set();
    work.until(() -> work.view().light().isAsking());
    work.rig.holdOpen(true);
    work.rig.rest(0.5);
    work.light.answer(Answer.DONE);
    work.until(() -> work.view().light().set().isPresent());
    work.rig.holdOpen(false);
    work.until(() -> !work.view().results().isEmpty());
  }

  @AfterEach
  void end() {
    work.close();
  }

  @Test
  void aTestOfARunIsShownInPlaceOfTheSpeed() {
    work.handle(
        new SessionInput.RunBegins(
            new RunSetup(
                "invented",
                Phase.AS_FOUND,
                "leaf",
                List.of(),
                Reference.EXACT,
                1,
                UntimedTest.LEAK)));
    work.until(work.light::isTesting);
    BenchView asks = work.view();
    assertThat(NextText.of(asks).large()).isEqualTo("leak test");
    assertThat(NextText.of(asks).count()).isEqualTo("Reading 1 of 3");
    assertThat(NumeralsText.of(asks).large()).isEqualTo(Words.say("desk.test.lamp-covered"));
    assertThat(MessageText.of(asks).text()).isEqualTo(Words.say("leak.ask.covered"));
    assertThat(MessageText.of(asks).kind()).isEqualTo(MessageText.Kind.QUESTION);
    assertThat(KeyHints.of(asks).stream().filter(KeyHints.Hint::answers).map(h -> h.words()))
        .containsExactly(Words.say("desk.key.accept.read"));

    work.rig.cover(true);
    work.light.answer(Answer.DONE);
    work.until(() -> work.view().lightTest().prompt().progress() > 0.2);
    BenchView reads = work.view();
    assertThat(NumeralsText.of(reads).tone()).isEqualTo(NumeralsText.Tone.PROVISIONAL);
    assertThat(NumeralsText.of(reads).time()).matches("reading, 6\\d %");
    assertThat(DarkText.of(reads).orElseThrow().more()).startsWith("leak test, reading 1 of 3");
    work.until(() -> work.view().lightTest().isAsking());
    assertThat(DarkText.of(work.view())).as("the person has to see what to do").isEmpty();
    assertThat(MessageText.of(work.view()).text()).startsWith("Read, lamp covered");
    assertThat(ExtraTestsText.of(work.view()).entries()).isEmpty();

    work.light.answer(Answer.STOP);
    assertThat(MessageText.of(work.view()).text()).contains("Space begins the readings");
    assertThat(KeyHints.of(work.view()).get(0).words())
        .isEqualTo(Words.say("desk.key.accept.begin"));
  }

  @Test
  void whatATestCameToIsSaid() {
    work.light.test(LightPlan.full());
    assertThat(NextText.of(work.view()).heading()).isEqualTo(Words.say("desk.next.noRun"));
    assertThat(NumeralsText.of(work.view()).large()).isEqualTo("hold it open");
    work.rig.holdOpen(true);
    work.light.answer(Answer.DONE);
    work.until(() -> !work.light.isTesting());
    assertThat(work.view().said().orElseThrow())
        .isEqualTo(
            new Message(
                Message.Kind.NEWS,
                "You may let the shutter close. Full light is 100 % of what was set."));
  }

  @Test
  void aTestOfThePanelHasItsNameAndItsWord() {
    work.light.test(LightPlan.panel());
    assertThat(NumeralsText.of(work.view()).large()).isEqualTo("panel in place");
    assertThat(NumeralsText.of(work.view()).note()).isEqualTo("panel test, reading 1 of 4");
    assertThat(work.view().lightTest().prompt().state()).isEqualTo(Prompt.State.ASKING);
  }
}
