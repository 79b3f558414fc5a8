package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.halflight.desk.view.Pedal;
import org.halflight.desk.view.SoundKind;
import org.halflight.desk.view.SoundsOn;
import org.halflight.files.SettingsFile;
import org.halflight.report.Paper;
import org.halflight.report.Workshop;
import org.halflight.session.AcceptanceCriteria;
import org.halflight.session.Measurand;
import org.halflight.session.RunOption;
import org.halflight.session.StopsAsked;
import org.halflight.trouble.Trouble;
import org.halflight.workflow.RunForm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The settings that version 0.1.0 of the window kept are read as they were meant. */
class OldSettingsTest {
  private static final Path FOLDER = Path.of("fixtures/old/settings");

  @Test
  void theSettingsOfAnOlderWindowAreKept() {
    DeskSettings settings = DeskSettings.of(FOLDER);

    assertThat(settings.dark()).isTrue();
    assertThat(settings.sounds()).isEqualTo(new SoundsOn(false, Set.of()));
    assertThat(settings.profileDays()).isEqualTo(45);
    AcceptanceCriteria criteria = RunForm.criteria(settings.options(), AcceptanceCriteria.USUAL);
    assertThat(settings.options()).containsEntry(RunOption.TOLERANCE, "0.25, 1/500=1/2");
    assertThat(criteria.measurand()).isEqualTo(Measurand.ONE_EXPOSURE);
    assertThat(criteria.untilDecided()).isTrue();
    assertThat(criteria.stops()).isEqualTo(new StopsAsked(List.of("3.5", "5.6", "8"), 0.5));
    assertThat(settings.options()).doesNotContainKey(RunOption.LINKAGE);
    assertThat(criteria.linkageGap()).isEmpty();
  }

  @Test
  void theWindowAndTheWorkshopDoNotWriteOverEachOther(@TempDir Path folder) throws IOException {
    Files.copy(FOLDER.resolve("settings.properties"), folder.resolve("settings.properties"));
    assertThat(Workshop.of(SettingsFile.read(folder))).isEqualTo(Workshop.NONE);
    DeskSettings window = DeskSettings.of(folder);
    Workshop workshop = new Workshop("W", "R", "logo.png", Optional.of(Paper.LETTER));
    SettingsFile.change(folder, workshop::keepIn);

    window.keep();

    assertThat(Workshop.of(SettingsFile.read(folder))).isEqualTo(workshop);
    assertThat(DeskSettings.of(folder)).isEqualTo(window);
  }

  @Test
  void aToleranceThatCannotBeReadStaysAndIsSaidBeforeARunBegins(@TempDir Path folder)
      throws IOException {
    Files.writeString(
        folder.resolve("settings.properties"),
        "tolerance=a bit\nlinkage-gap=0..2\nlinkage=-0.5..2\n");

    Map<RunOption<?>, String> options = DeskSettings.of(folder).options();

    assertThat(options)
        .containsEntry(RunOption.LINKAGE_GAP, "0..2")
        .doesNotContainKey(RunOption.LINKAGE);
    assertThatThrownBy(() -> RunForm.criteria(options, AcceptanceCriteria.USUAL))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("a bit is not a tolerance");
  }

  @Test
  void pedalsAndSoundsAreKept(@TempDir Path folder) throws IOException {
    SoundsOn sounds = new SoundsOn(true, Set.of(SoundKind.ASKED, SoundKind.OPEN));
    Map<Pedal.Use, Pedal.Key> pedals = Map.of(Pedal.Use.BACK, new Pedal.Key(61440, 1));
    DeskSettings.of(folder).with(false, sounds, pedals).keep();

    assertThat(DeskSettings.of(folder).sounds()).isEqualTo(sounds);
    assertThat(DeskSettings.of(folder).pedals()).isEqualTo(pedals);
    Files.writeString(folder.resolve("settings.properties"), "pedal=F13\nsounds-off=loud asked\n");
    assertThat(DeskSettings.of(folder).pedals()).isEmpty();
    assertThat(DeskSettings.of(folder).sounds().off()).containsExactly(SoundKind.ASKED);
  }

  @Test
  void whatIsKeptIsReadAgainButNotThatTheContactIsWired(@TempDir Path folder) {
    Map<RunOption<?>, String> chosen =
        Map.of(
            RunOption.UNTIL_DECIDED, "until-decided",
            RunOption.ABOUT, "one-exposure",
            RunOption.CONTACT, "wired",
            RunOption.WET, "wet");
    DeskSettings.of(folder).with(chosen).keep();

    assertThat(DeskSettings.of(folder).options())
        .containsEntry(RunOption.UNTIL_DECIDED, "until-decided")
        .containsEntry(RunOption.ABOUT, "one-exposure")
        .doesNotContainKeys(RunOption.CONTACT, RunOption.WET);
  }
}
