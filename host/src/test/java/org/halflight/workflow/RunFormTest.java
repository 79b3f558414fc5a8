package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.halflight.job.Camera;
import org.halflight.session.CameraCustoms;
import org.halflight.session.GapLimits;
import org.halflight.session.Measurand;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.session.RunSetup;
import org.halflight.session.ShutterUnderTest;
import org.halflight.session.StopsAsked;
import org.halflight.session.UntimedTest;
import org.halflight.speeds.Dial;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.ShutterKind;
import org.halflight.trouble.Trouble;
import org.halflight.words.OptionWords;
import org.halflight.words.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RunFormTest {
  private static RunForm form(
      String speeds, int firings, List<UntimedTest> checks, Map<RunOption<?>, String> options) {
    return new RunForm(
        new ShutterUnderTest(
            "mine", ShutterKind.LEAF, "leaf", Reference.EXACT, new CameraCustoms(true, false)),
        Phase.AS_FOUND,
        speeds,
        firings,
        OptionalDouble.of(3600),
        checks,
        options);
  }

  @Test
  void theDryRunIsTheWetOneAgainAsLeft() {
    RunSetup wet = form("1/30, 1/60", 4, List.of(), Map.of(RunOption.WET, "wet")).read();
    RunSetup dry = RunForm.dry(wet, "mine").read();
    assertThat(dry.phase()).isEqualTo(Phase.AS_LEFT);
    assertThat(dry.conditions().isWet()).isFalse();
    assertThat(dry.conditions().noted()).containsEntry("wet", "dry");
    assertThat(dry.order()).isEqualTo(wet.order());
    assertThat(dry.firingsPerSpeed()).isEqualTo(4);
    assertThat(dry.camera()).isEqualTo("mine");
  }

  @Test
  void aRunIsReadAsItIsWritten() {
    RunSetup setup =
        form(
                "1/60, 1/30 ; 1/60, 1/125",
                5,
                List.of(UntimedTest.B),
                Map.of(
                    RunOption.CELLS, "off",
                    RunOption.STOP, " f/5.6 ",
                    RunOption.ABOUT, "one-exposure",
                    RunOption.UNTIL_DECIDED, "until-decided",
                    RunOption.STOPS, "f/8 2.8; 5.6",
                    RunOption.STOP_TOLERANCE, "1/2",
                    RunOption.LINKAGE_GAP, "-0.5 to 2",
                    RunOption.CONTACT, "wired"))
            .read();
    assertThat(setup.order())
        .extracting(MarkedSpeed::label)
        .containsExactly("1/60", "1/30", "1/125");
    assertThat(setup.dial()).isEqualTo("leaf");
    assertThat(setup.reference()).isEqualTo(Reference.EXACT);
    assertThat(setup.untimedTests()).containsExactly(UntimedTest.B);
    assertThat(setup.customs().topSpeedBeforeCocking()).isTrue();
    assertThat(setup.conditions().restSeconds()).hasValue(3600);
    assertThat(setup.conditions().noted())
        .containsExactlyInAnyOrderEntriesOf(Map.of("cells", "off", "stop", "f/5.6"));
    assertThat(setup.criteria().measurand()).isEqualTo(Measurand.ONE_EXPOSURE);
    assertThat(setup.criteria().untilDecided()).isTrue();
    assertThat(setup.criteria().stops()).isEqualTo(new StopsAsked(List.of("2.8", "5.6", "8"), 0.5));
    assertThat(setup.criteria().linkageGap()).contains(new GapLimits(-0.5, 2));
    assertThat(setup.criteria().flashContact()).isTrue();
    assertThat(
            RunForm.usual("", Phase.AS_FOUND, Dial.builtIn().get(0))
                .with(RunForm.texts(setup))
                .read()
                .criteria())
        .isEqualTo(setup.criteria());
  }

  @Test
  void speedsThatAreNotOnTheDialMakeADialOfTheirOwn() {
    assertThat(form("1/50, 1/100", 5, List.of(), Map.of()).read().dial()).isEqualTo(Dial.CUSTOM);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, -1, 101})
  void aNumberOfFiringsThatIsNoneIsRefused(int firings) {
    assertThatThrownBy(() -> form("1/60", firings, List.of(), Map.of()).read())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("Ask for 1 to 100");
  }

  @ParameterizedTest
  @CsvSource({
    "'1/60, fast', fast is not a speed",
    "'', at least one speed or check",
    "' , ', at least one speed or check",
    "1/0, 1/0 is not a speed"
  })
  void speedsThatAreNoneAreRefused(String speeds, String said) {
    assertThatThrownBy(() -> form(speeds, 5, List.of(), Map.of()).read())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining(said);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2.8, 4, 5.6|2.8 4 5.6",
        "2.8,4,5.6|2.8 4 5.6",
        "2,8 4 5,6|2.8 4 5.6",
        "f/2,8; f/4; f/5,6|f/2.8 f/4 f/5.6",
        "2,8, 4, 5,6|2.8 4 5.6",
        "4,8,11|4 8 11",
        "1,234.5, 4|1 234.5 4"
      })
  void stopsMayHaveDecimalCommas(String typed, String read) {
    assertThat(RunForm.stops(typed)).containsExactly(read.split(" ", -1));
  }

  @Test
  void afterAsFoundComesAsLeftOnceItIsDone() {
    RunSetup found = RunForm.usual("mine", Phase.AS_FOUND, Dial.builtIn().get(0)).read();
    assertThat(RunForm.after(found, "mine", true).phase()).isEqualTo(Phase.AS_LEFT);
    assertThat(RunForm.after(found, "mine", false).phase()).isEqualTo(Phase.AS_FOUND);
    assertThat(RunForm.after(found, "mine", false).read()).isEqualTo(found);
  }

  @Test
  void theSameCameraGoesOnAndAnotherBeginsAsFoundWithTheUsualOptions() {
    Dial dial = Dial.builtIn().get(0);
    RunSetup mine = RunForm.usual("mine", Phase.AS_LEFT, dial).read();
    Camera another = Camera.of("another", ShutterKind.LEAF, dial);
    Map<RunOption<?>, String> usual = Map.of(RunOption.CONDITIONS.get(0), "usual");

    assertThat(next(Optional.of(mine), Optional.empty(), usual).phase()).isEqualTo(Phase.AS_LEFT);
    RunForm form = next(Optional.of(mine), Optional.of(another), usual);
    assertThat(form.phase()).isEqualTo(Phase.AS_FOUND);
    assertThat(form.shutter().camera()).isEqualTo("another");
    assertThat(form.options()).isEqualTo(usual);
    assertThat(next(Optional.empty(), Optional.empty(), usual).shutter().camera()).isEmpty();
    // Who begins before the camera is named goes on when it has its name.
    RunSetup nobodys = RunForm.usual("", Phase.AS_LEFT, dial).read();
    RunForm named = next(Optional.of(nobodys), Optional.of(another), usual);
    assertThat(named.phase()).isEqualTo(Phase.AS_LEFT);
    assertThat(named.shutter().camera()).isEqualTo("another");
  }

  private static RunForm next(
      Optional<RunSetup> before, Optional<Camera> here, Map<RunOption<?>, String> usual) {
    return RunForm.next(before, false, here, usual);
  }

  static Stream<RunOption<?>> options() {
    return RunOption.ALL.stream().filter(RunOption::isOffered);
  }

  /** So nothing but its sentences has to be written when an option is added. */
  @ParameterizedTest
  @MethodSource("options")
  void everyOptionHasItsSentences(RunOption<?> option) {
    assertThat(OptionWords.label(option)).isNotBlank();
    assertThat(OptionWords.help(option)).isNotBlank();
    assertThat(OptionWords.usual(option)).isNotBlank();
    assertThat(option.words())
        .allMatch(word -> Words.has("run.option." + option.name() + "." + word));
  }

  /** Words that are no option's, and texts that no criterion can be read from. */
  @ParameterizedTest
  @MethodSource("options")
  void whatAnOptionDoesNotKnowIsRefusedInOneLine(RunOption<?> option) {
    if (option == RunOption.STOP) {
      // Noted in the person's words.
      assertThat(form("1/60", 5, List.of(), Map.of(option, "?")).read()).isNotNull();
      return;
    }
    assertThatThrownBy(() -> form("1/60", 5, List.of(), Map.of(option, "?")).read())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("?")
        .hasMessageNotContaining("\n");
  }
}
