package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.extratest.InventedAdvance;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;

class AdvanceTimingPictureTest {
  @Test
  void trialsStandInARowWithTheNewestLast() throws IOException {
    InventedAdvance camera =
        InventedAdvance.trials(Phase.ADJUSTING, 0.0121, 0.0074, -0.0011, -0.0052, 0.0009, 0.0017);

    Picture picture =
        ExtraTestPictures.of(camera.timing(), "Invented clicks, no real camera.").orElseThrow();

    DataTable table = picture.table();
    assertThat(table.rows()).hasSize(6);
    assertThat(table.cell(0, "advance ahead of shutter")).isEqualTo("+12.1 ms");
    assertThat(table.cell(0, "no interval because")).isEmpty();
    assertThat(table.cell(2, "advance ahead of shutter")).isEmpty();
    assertThat(table.cell(2, "no interval because")).isEqualTo("too close to separate");
    assertThat(table.cell(5, "measured by")).isEqualTo("click");
    Path file = Path.of("target", "pictures", "timing.png");
    Files.createDirectories(file.getParent());
    Files.write(file, PictureImage.png(picture, 900, 480, 1));
    assertThat(Files.size(file)).isPositive();
  }
}
