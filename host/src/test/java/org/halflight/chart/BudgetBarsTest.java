package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.stats.Sample;
import org.halflight.uncertainty.RampTravel;
import org.halflight.uncertainty.RigKnowledge;
import org.halflight.verdict.DecisionBasis;
import org.halflight.verdict.DecisionRule;
import org.halflight.verdict.HowMeasured;
import org.halflight.verdict.ReleaseCounts;
import org.halflight.verdict.SpeedSummary;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

/** All figures here are invented. */
class BudgetBarsTest {
  private static SpeedSummary fired(double... errors) {
    return new SpeedSummary(
        MarkedSpeed.parse("1/500"),
        Reference.EXACT,
        Phase.AS_FOUND,
        new ReleaseCounts(errors.length, Map.of()),
        Sample.of(errors),
        OptionalDouble.empty(),
        org.halflight.speeds.Tolerance.HALF,
        new HowMeasured(
            Optional.of(new RampTravel(2e-3, 0.2e-3, 24e-6)),
            new DecisionBasis(RigKnowledge.UNCALIBRATED, DecisionRule.FIXED_NUMBER)));
  }

  private final SpeedSummary speed = fired(0.1, 0.14, 0.12, 0.16, 0.11);
  private final BudgetBars bars = BudgetBars.of(speed, "invented").orElseThrow();

  @Test
  void theLargestPartsAreBarsTheLargestOnTop() {
    XYDataset data = bars.chart(Theme.LIGHT).getXYPlot().getDataset();
    double sum = 0;
    double[] byPlace = new double[BudgetBars.MOST_BARS];
    for (int row = 0; row < 2; row++) {
      for (int i = 0; i < data.getItemCount(row); i++) {
        sum += data.getXValue(row, i);
        byPlace[(int) data.getYValue(row, i)] = data.getXValue(row, i);
      }
    }
    // The three that are left out have next to no share.
    assertThat(sum).isBetween(99.0, 100.0);
    assertThat(byPlace).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    // Only the scatter of the firings is measured on a rig that nobody has calibrated.
    assertThat(data.getItemCount(data.indexOf(BudgetBars.MEASURED))).isEqualTo(1);
    assertThat(data.getItemCount(data.indexOf(BudgetBars.ALLOWED)))
        .isEqualTo(BudgetBars.MOST_BARS - 1);
  }

  @Test
  void theTwinSaysTheSameInTheSameOrder() {
    DataTable twin = bars.table();
    assertThat(twin.rows()).hasSize(9);
    assertThat(twin.caption()).contains("1/500").contains("as found").contains("95 %");
    assertThat(twin.headings()).contains("degrees of freedom", "share", "based on");
    assertThat(IntStream.range(0, 9).mapToObj(i -> twin.cell(i, "based on")))
        .filteredOn("firings"::equals)
        .hasSize(1);
    assertThat(twin.note()).isEqualTo("invented");
  }

  @Test
  void oneFiringHasNoBudget() {
    assertThat(BudgetBars.of(fired(0.1), "")).isEmpty();
  }

  /** A hatched box and a full bar differ in light and dark alike, in grey too. */
  @Test
  void allowancesLookOtherThanWhatWasMeasuredWithoutAnyColour() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      BufferedImage image = PictureImage.drawn(bars, theme, 1000, 500, 1).image();
      assertThat(share(image, theme.asLeft().getRGB())).isGreaterThan(0.002);
      assertThat(share(image, theme.asFound().getRGB())).isBetween(0.0002, 0.02);
    }
  }

  private static double share(BufferedImage image, int rgb) {
    int count = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y++) {
        count += image.getRGB(x, y) == rgb ? 1 : 0;
      }
    }
    return count / (double) (image.getWidth() * image.getHeight());
  }
}
