package org.halflight.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.halflight.session.RunOption.In;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Tolerances;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class RunOptionTest {
  private static final AcceptanceCriteria ALL =
      AcceptanceCriteria.USUAL
          .with(RunOption.TOLERANCE, Tolerances.find("0.25, 1/500=1/2").orElseThrow())
          .with(RunOption.ABOUT, Measurand.ONE_EXPOSURE)
          .with(RunOption.UNTIL_DECIDED, true)
          .with(RunOption.QUICK, true)
          .with(RunOption.STOPS, List.of("3.5", "5.6", "8"))
          .with(RunOption.STOP_TOLERANCE, 0.25)
          .with(RunOption.LINKAGE, "-0.5..2.0")
          .with(RunOption.LINKAGE_GAP, Optional.of(new GapLimits(-0.1, 0.2)))
          .with(RunOption.CONTACT, true)
          .with(RunOption.STAGES, true)
          .with(RunOption.OWN_TRAVEL, Optional.of(new OwnTravel(12.9, 32.4)))
          .with(RunOption.X_SPEED, MarkedSpeed.find("1/60"))
          .with(RunOption.ADJUSTERS, Set.of(Adjuster.SLIT, Adjuster.FIRST_TENSION));

  @ParameterizedTest
  @EnumSource(In.class)
  void criteriaComeBackAndTheUsualOnesTakeNoRoom(In place) {
    assertThat(ALL.written(place)).hasSize(RunOption.CRITERIA.size());
    assertThat(AcceptanceCriteria.read(ALL.written(place), place)).isEqualTo(ALL);
    assertThat(AcceptanceCriteria.USUAL.written(place)).isEmpty();
    assertThat(AcceptanceCriteria.read(Map.of("other", "1/3"), place))
        .isEqualTo(AcceptanceCriteria.USUAL);
  }

  @Test
  void theirNamesAndWordsInFilesAreAsTheyWere() {
    assertThat(ALL.written(In.MARK))
        .containsExactlyInAnyOrderEntriesOf(
            Map.ofEntries(
                Map.entry("tolerance", "0.25, 1/500=0.5"),
                Map.entry("about", "one-exposure"),
                Map.entry("fired", "until-decided"),
                Map.entry("quick", "quick"),
                Map.entry("stops", "3.5,5.6,8"),
                Map.entry("stop-tolerance", "0.25"),
                Map.entry("linkage", "-0.5..2.0"),
                Map.entry("linkage-gap", "-0.1..0.2"),
                Map.entry("contact", "wired"),
                Map.entry("stages", "stages"),
                Map.entry("own-travel", "12.9 ms over 32.4 mm"),
                Map.entry("x-speed", "1/60"),
                Map.entry("adjusters", "first-tension,slit")));
    assertThat(ALL.written(In.RECORD))
        .containsExactlyInAnyOrderEntriesOf(
            Map.ofEntries(
                Map.entry("aim-tolerance", "0.25, 1/500=0.5"),
                Map.entry("aim-measurand", "one-exposure"),
                Map.entry("aim-until-decided", "yes"),
                Map.entry("aim-quick", "yes"),
                Map.entry("aim-stops", "3.5,5.6,8"),
                Map.entry("aim-stop-tolerance", "0.25"),
                Map.entry("aim-linkage", "-0.5..2.0"),
                Map.entry("aim-linkage-gap", "-0.1..0.2"),
                Map.entry("aim-flash-contact", "yes"),
                Map.entry("aim-stages", "yes"),
                Map.entry("aim-own-travel", "12.9 ms over 32.4 mm"),
                Map.entry("aim-x-speed", "1/60"),
                Map.entry("aim-adjusters", "first-tension,slit")));
  }

  @ParameterizedTest
  @CsvSource({
    "tolerance, a bit",
    "measurand, the-median",
    "until-decided, sometimes",
    "quick, soon",
    "stops, 4",
    "stops, ''",
    "stop-tolerance, NaN",
    "stop-tolerance, 1/0",
    "linkage-gap, 3..1",
    "linkage-gap, 0..11",
    "flash-contact, ''",
    "own-travel, 17 ms",
    "own-travel, 0 over 36",
    "x-speed, fast",
    "adjusters, 'slit,screw'"
  })
  void whatCannotBeReadIsNeverTakenForTheUsual(String name, String text) {
    Map<String, String> written = new HashMap<>(ALL.written(In.RECORD));
    written.put("aim-" + name, text);
    assertThatThrownBy(() -> AcceptanceCriteria.read(written, In.RECORD))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("aim-" + name + " cannot be read: " + text);
  }

  @Test
  void noTwoOptionsAreKeptUnderOneName() {
    for (In place : In.values()) {
      assertThat(RunOption.ALL.stream().map(option -> option.name(place))).doesNotHaveDuplicates();
    }
    assertThat(Stream.of(RunOption.class.getFields()).filter(f -> f.getType() == RunOption.class))
        .as("every option that is declared is listed")
        .hasSize(RunOption.ALL.size());
  }
}
