package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.desk.view.CriteriaForm;
import org.halflight.desk.view.StopsForm;
import org.halflight.session.Measurand;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The settings that version 0.1.0 of the window kept are read as they were meant. */
class OldSettingsTest {
  private static final Path FOLDER = Path.of("fixtures/old/settings");

  @Test
  void theSettingsOfAnOlderWindowAreKept() {
    DeskSettings settings = DeskSettings.of(FOLDER);

    assertThat(settings.dark()).isTrue();
    assertThat(settings.sounds()).isFalse();
    assertThat(settings.profileDays()).isEqualTo(45);
    CriteriaForm criteria = settings.criteria();
    assertThat(criteria.tolerance()).isEqualTo("0.25, 1/500=1/2");
    assertThat(criteria.measurand()).isEqualTo(Measurand.ONE_EXPOSURE);
    assertThat(criteria.untilDecided()).isTrue();
    assertThat(criteria.stops()).isEqualTo(new StopsForm("3.5, 5.6, 8", "1/2"));
    assertThat(criteria.linkage()).isEqualTo("-0.5..2");
  }

  @Test
  void aToleranceThatCannotBeReadStaysAndIsSaidBeforeARunBegins(@TempDir Path folder)
      throws IOException {
    Files.writeString(
        folder.resolve("settings.properties"), "tolerance=a bit\nlinkage=-0.5..2\nabout=mean\n");

    CriteriaForm criteria = DeskSettings.of(folder).criteria();

    assertThat(criteria.linkage()).isEqualTo("-0.5..2");
    assertThatThrownBy(criteria::read)
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("a bit is not a tolerance");
  }
}
