package org.halflight.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;

class FileProgressTest {
  @Test
  void stepsAreSeenUntilThePersonEndsIt() {
    List<FileProgress.Step> seen = new ArrayList<>();
    FileProgress progress = new FileProgress(seen::add);
    progress.at("one", 0, 2);
    progress.end();
    assertThatThrownBy(() -> progress.at("two", 1, 2))
        .isInstanceOf(Trouble.class)
        .hasMessage("You ended it. Nothing was saved.");
    assertThat(seen).containsExactly(new FileProgress.Step("one", 0, 2));
  }
}
