package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.halflight.firstlight.Finding;
import org.halflight.firstlight.FirstLight;
import org.halflight.firstlight.FirstStep;
import org.halflight.firstlight.Seen;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FirstLightInSessionTest {
  @TempDir private Path folder;

  @Test
  void lightAndFiringPassOnlyWithFiguresOfTheirOwn() {
    try (PracticeBench bench = PracticeBench.unpaced(folder)) {
      FirstLight begun = FirstLight.of(bench.driver.workbench().fold().greeting().orElseThrow());
      bench.operator.fire(Optional.empty());
      bench.until("a firing without light", () -> bench.session().results().size() == 1);
      FirstLight dark = FirstLightInSession.of(begun, bench.session(), 0);
      assertThat(dark.of(FirstStep.LIGHT).outcome()).isEqualTo(Finding.Outcome.NOT_TESTED);
      assertThat(dark.findings()).doesNotContainKey(FirstStep.FIRING);

      BenchLight light = new BenchLight(bench.driver, bench.operator);
      light.set();
      bench.each(light::advance);
      bench.until("the light is set", () -> bench.session().light().isPresent());
      bench.steps(50);
      int before = bench.session().results().size();
      // What was fired before first light says nothing of it.
      assertThat(FirstLightInSession.of(begun, bench.session(), before).findings())
          .doesNotContainKey(FirstStep.FIRING);
      bench.operator.fire(Optional.empty());
      bench.until("a firing", () -> bench.session().results().size() > before);
      FirstLight lit = FirstLightInSession.of(begun, bench.session(), before);
      assertThat(lit.of(FirstStep.LIGHT).seen().get(0)).isInstanceOf(Seen.LightSet.class);
      assertThat(lit.of(FirstStep.FIRING).isPassed()).isTrue();
      assertThat(lit.of(FirstStep.FIRING).seen())
          .isEqualTo(
              List.of(
                  new Seen.Fired(
                      bench.session().results().get(before).effectiveSeconds().orElseThrow())));
      assertThat(lit.of(FirstStep.CALIBRATION).outcome()).isEqualTo(Finding.Outcome.NOT_TESTED);
      assertThat(
              FirstLightInSession.paged(lit, folder.resolve("first.pdf")).of(FirstStep.PAGE).seen())
          .containsExactly(new Seen.Kept("first.pdf"));
    }
  }
}
