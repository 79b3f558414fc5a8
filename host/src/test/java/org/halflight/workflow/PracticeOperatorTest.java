package org.halflight.workflow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.halflight.bench.LightPlan;
import org.halflight.bench.LightProbe;
import org.halflight.extratest.FNumber;
import org.halflight.session.DialSetting;
import org.halflight.session.FiringResult;
import org.halflight.session.Outcome;
import org.halflight.session.UntimedTest;
import org.halflight.shuttermodel.InventedStops;
import org.halflight.speeds.MarkedSpeed;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The invented camera does the same in the terminal and in the window. All figures are invented.
 */
class PracticeOperatorTest {
  private static final MarkedSpeed SIXTIETH = MarkedSpeed.parse("1/60");

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whatALightTestAsksForIsDone(boolean paced) {
    try (PracticeBench bench = bench(paced)) {
      double dark = read(bench, LightPlan.leak().steps().get(0));
      // The cover is off again, also where the step that asks for it was skipped.
      double leaks = read(bench, LightPlan.leak().steps().get(2)) - dark;
      List<Double> panel =
          LightPlan.panel().steps().stream().map(step -> read(bench, step) - dark).toList();
      assertThat(leaks).isCloseTo(panel.get(0) / 256, within(0.5));
      assertThat(panel.get(1)).isCloseTo(panel.get(0) * 0.85 / 0.95, withinPercentage(1));
      assertThat(panel.get(2)).isCloseTo(panel.get(1), withinPercentage(1));
      assertThat(panel.get(3)).isCloseTo(panel.get(0), withinPercentage(1));
      bench.operator.putBack();
      assertThat(read(bench, LightPlan.leak().steps().get(1)) - dark).isCloseTo(0, within(0.5));

      List<LightPlan.Step> stops =
          LightPlan.stops(numbers("4", "5.6", "8"), OptionalDouble.empty()).steps();
      List<Double> read = stops.stream().map(step -> read(bench, step) - dark).toList();
      for (int i = 1; i < stops.size(); i++) {
        double marked =
            new FNumber(stops.get(i).at()).apertureValue() - new FNumber("4").apertureValue();
        assertThat(read.get(i) / read.get(0))
            .isCloseTo(
                InventedStops.WORN.share(marked, stops.get(i).opening()), withinPercentage(1));
      }
      bench.operator.putBack();
      assertThat(read(bench, LightPlan.full().steps().get(0)) - dark)
          .isCloseTo(read.get(0), withinPercentage(1));
    }
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void itFiresWhatIsShown(boolean paced) {
    try (PracticeBench bench = bench(paced)) {
      fire(bench, new DialSetting.Speed(SIXTIETH));
      fire(bench, new DialSetting.Untimed(UntimedTest.SELF_TIMER));
      fire(bench, new DialSetting.Untimed(UntimedTest.T));
      assertThat(bench.session().results())
          .extracting(FiringResult::outcome)
          .containsOnly(Outcome.TIMED)
          .hasSize(3);
    }
  }

  private static List<FNumber> numbers(String... engraved) {
    return List.of(engraved).stream().map(FNumber::new).toList();
  }

  private PracticeBench bench(boolean paced) {
    Function<Path, PracticeBench> begins = paced ? PracticeBench::paced : PracticeBench::unpaced;
    return begins.apply(folder);
  }

  private static void fire(PracticeBench bench, DialSetting shown) {
    int before = bench.session().results().size();
    bench.operator.fire(Optional.of(shown));
    bench.until("it has fired", () -> bench.session().results().size() > before);
  }

  private static double read(PracticeBench bench, LightPlan.Step step) {
    bench.operator.prepare(step);
    bench.until("it is done", bench.operator::isDone);
    LightProbe probe = bench.driver.light().read(step.what(), step.at(), step.opening());
    bench.until("it is read", () -> probe.step() != LightProbe.Step.READING);
    return probe.reading().orElseThrow().counts();
  }
}
