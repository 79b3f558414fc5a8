package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveMethod;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.LightLevels;
import org.halflight.signal.SampledLight;
import org.halflight.signal.SampledLight.Kind;
import org.halflight.signal.SampledLight.Part;
import org.halflight.time.TickRate;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

/** A curve of straight ramps, 1 ms each, 3 ms of effective time. Invented. */
class LightCurvePictureTest {
  private static final LightLevels LIGHT = new LightLevels(20, 820, 189, 651);

  private static LightCurvePicture picture(boolean cutOff) {
    List<Integer> values = new ArrayList<>();
    for (int i = 0; i < 330; i++) {
      double millis = (i - 40) * 0.016;
      double open = Math.max(0, Math.min(1, Math.min(millis, 4 - millis)));
      values.add((int) ((20 + 800 * open) / 4));
    }
    SampledLight sampled =
        new SampledLight(List.of(new Part(Kind.OPENING, 0, 256, values, false)), cutOff);
    CurveExposure exposure = CurveMethod.measure(sampled, LIGHT, TickRate.BOARD_16_MHZ);
    return new LightCurvePicture(
        "Light curve, 1/250, firing 3",
        CurvePoints.of(sampled, LIGHT, TickRate.BOARD_16_MHZ),
        exposure,
        LevelPair.GAUSS,
        "Simulated figures.");
  }

  @Test
  void theChartHoldsTheCurveAndTheHalfLightPoints() {
    for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
      XYPlot plot = (XYPlot) picture(false).chart(theme).getPlot();
      XYDataset data = plot.getDataset();
      assertThat(data.getItemCount(data.indexOf(LightCurvePicture.LIGHT))).isEqualTo(330);
      int half = data.indexOf(LightCurvePicture.HALF_LIGHT);
      // 40 readings of dark are 0.64 ms; half a ramp later, and half a ramp before the end.
      assertThat(data.getXValue(half, 0)).isCloseTo(0.64 + 0.5, within(0.006));
      assertThat(data.getXValue(half, 1)).isCloseTo(0.64 + 3.5, within(0.006));
      assertThat(plot.getBackgroundPaint()).isEqualTo(theme.background());
    }
  }

  @Test
  void theTableSaysTheSame() {
    DataTable table = picture(false).table();
    assertThat(table.caption()).isEqualTo("Light curve, 1/250, firing 3");
    assertThat(table.note()).isEqualTo("Simulated figures.");
    assertThat(value(table, "effective time")).matches("(2\\.99.|3\\.00.) ms \u00b1 0\\.01. ms");
    assertThat(value(table, "fully open")).isEqualTo("yes");
    assertThat(value(table, "low level")).isEqualTo("21.1 %");
    assertThat(value(table, "opening")).matches("(0\\.9..|1\\.0..) ms, p = (0\\.9.|1\\.0.)");
  }

  @Test
  void aCurveWithoutAFigureIsDrawnAndSaysWhy() {
    LightCurvePicture cut = picture(true);
    assertThat(value(cut.table(), "no figure")).isEqualTo("cut off");
    XYPlot plot = (XYPlot) cut.chart(Theme.LIGHT).getPlot();
    assertThat(plot.getDataset().getItemCount(0)).isEqualTo(330);
    assertThat(PictureImage.png(cut, 600, 300, 1).length).isGreaterThan(1000);
  }

  private static String value(DataTable table, String figure) {
    return table.rows().stream()
        .filter(row -> row.get(0).equals(figure))
        .findFirst()
        .orElseThrow()
        .get(1);
  }
}
