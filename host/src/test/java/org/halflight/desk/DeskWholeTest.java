package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A whole repair in the window on the practice rig; on the board: {@link DeskOnTheBoardTest}. */
@ExtendWith(Display.class)
@Tag("window")
class DeskWholeTest {
  @ParameterizedTest
  @ValueSource(strings = {"keys", "pedal", "curtains"})
  void aWholeRepairOnThePracticeRigBy(String means) throws Exception {
    Path folder = Path.of("target", "desk-whole", means);
    DeskTest.clear(folder);
    try (Display display = new Display()) {
      assertThat(display.run(DeskWhole.class, folder.toString(), means))
          .endsWith("WHOLE: done\nexit code 0");
    }
  }
}
