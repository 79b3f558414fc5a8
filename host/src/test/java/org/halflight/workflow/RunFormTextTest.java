package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.LinkedHashMap;
import java.util.Map;
import org.halflight.session.Phase;
import org.halflight.session.RunOption;
import org.halflight.speeds.Dial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is read on the line of a group of the set-up while it is folded. */
class RunFormTextTest {
  private static final Dial DIAL = Dial.builtIn().get(0);
  private static final RunForm USUAL = RunForm.usual("mine", Phase.AS_FOUND, DIAL);

  @Test
  void whatIsUsualIsSaidInWords() {
    assertThat(RunFormText.speeds(USUAL, USUAL.speeds()))
        .isEqualTo("all of the dial, 1 to 1/500 s, exact times");
    assertThat(RunFormText.criteria(Map.of()))
        .isEqualTo("a third of a stop, half at the top, usual exposure of the setting");
    assertThat(RunFormText.conditions(Map.of(), "")).isEqualTo("nothing noted");
    assertThat(RunFormText.shutter(USUAL)).isEqualTo("flash contact not wired");
  }

  @Test
  void whatIsChosenIsSaidInstead() {
    assertThat(RunFormText.speeds(with("1/125"), USUAL.speeds())).isEqualTo("1/125, exact times");
    assertThat(RunFormText.speeds(with(" "), USUAL.speeds()))
        .isEqualTo("no marked speed, exact times");
    assertThat(
            RunFormText.conditions(
                options("place", "in-camera", "cells", "on", "cover", "on", "stop", "5,6"),
                "about a day"))
        .isEqualTo("in the camera, cells on, cover on, aperture 5,6, rested about a day");
    assertThat(
            RunFormText.criteria(
                options("tolerance", "0.25", "about", "one-exposure", "stop-tolerance", "1/2")))
        .isEqualTo("tolerance 0.25, one exposure, apertures within 1/2 stop");
    assertThat(RunFormText.shutter(USUAL.with(options("contact", "wired"))))
        .isEqualTo("flash contact wired");
  }

  @ParameterizedTest
  @CsvSource({
    "speeds, 1/60 sixty, 5, '', ''",
    "firings, 1/60, 0, '', ''",
    "tolerance, 1/60, 5, tolerance, wide",
    "stop-tolerance, 1/60, 5, stop-tolerance, 4",
    "stops, 1/60, 5, stops, wide",
    "linkage-gap, 1/60, 5, linkage-gap, a little"
  })
  void whatIsWrongNamesItsField(
      String field, String speeds, int firings, String option, String text) {
    RunForm form =
        new RunForm(
            USUAL.shutter(),
            USUAL.phase(),
            speeds,
            firings,
            USUAL.restSeconds(),
            USUAL.untimedTests(),
            option.isEmpty() ? Map.of() : options(option, text));
    WrongField wrong = catchThrowableOfType(WrongField.class, form::read);
    assertThat(wrong.field()).isEqualTo(field);
  }

  private static RunForm with(String speeds) {
    return new RunForm(
        USUAL.shutter(),
        USUAL.phase(),
        speeds,
        USUAL.firings(),
        USUAL.restSeconds(),
        USUAL.untimedTests(),
        USUAL.options());
  }

  private static Map<RunOption<?>, String> options(String... namesAndTexts) {
    Map<RunOption<?>, String> options = new LinkedHashMap<>();
    for (int i = 0; i < namesAndTexts.length; i += 2) {
      String name = namesAndTexts[i];
      options.put(
          RunOption.ALL.stream().filter(o -> o.name().equals(name)).findFirst().orElseThrow(),
          namesAndTexts[i + 1]);
    }
    return options;
  }
}
