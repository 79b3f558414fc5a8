package org.halflight.desk.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.halflight.session.Phase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CurtainBenchTest {
  @TempDir Path folder;

  @Test
  void look() {
    try (PracticeWork work = new PracticeWork(folder, CurtainWork.found())) {
      CurtainWork.begin(work, Phase.AS_FOUND);
      System.out.println(work.view().setup().orElseThrow().settings());
      for (int i = 0; i < 6; i++) {
        BenchView v = work.fire();
        System.out.println(v.results().get(v.results().size() - 1).exposure());
        System.out.println(CurtainText.of(v));
        System.out.println(CurtainFindings.of(v).map(f -> f.advice() + " " + f.signs()));
      }
      System.out.println(
          BenchPictures.all(work.view(), Optional.of(CurtainWork.DIAL.top())).large().twin());
    }
    assertThat(folder).exists();
  }
}
