package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.halflight.box.AvrTools;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The window from end to end on the real firmware in its simulator. All figures are simulated. */
@ExtendWith({AvrTools.class, Display.class})
@Tag("board")
class DeskOnTheBoardTest {
  @TempDir private Path folder;

  @Test
  void aWholeRepairOnTheSimulatedBoard() throws Exception {
    try (Display display = new Display()) {
      String printed = display.run(DeskWhole.class, folder.toString(), "board");
      assertThat(printed).endsWith("WHOLE: done\nexit code 0");
    }
  }

  @Test
  void whateverMayGoWrongOnceOnTheSimulatedBoard() throws Exception {
    try (Display display = new Display()) {
      String printed = display.run(DeskOnTheBoard.class, folder.toString());
      assertThat(printed).endsWith("ON THE BOARD: done\nexit code 0");
    }
  }
}
