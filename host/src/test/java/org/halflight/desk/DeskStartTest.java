package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** What happens where the window does not start, or a thread of it has a fault. */
@Tag("window")
@ExtendWith(Display.class)
class DeskStartTest {
  @Test
  void aStartThatFailsIsShownAndAFaultIsSaid(@TempDir Path folder) throws Exception {
    try (Display display = new Display()) {
      String printed = display.run(DeskStart.class, folder.toString());
      assertThat(printed).endsWith("DESK START: done\nexit code 0");
    }
  }
}
