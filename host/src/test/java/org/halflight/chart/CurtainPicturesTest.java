package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.halflight.exposure.Direction;
import org.halflight.session.Phase;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

/** Pictures of curtains say the same as their twins. All figures are invented. */
class CurtainPicturesTest {
  private static final Map<String, Picture> ALL = InventedCurtainPictures.all();

  private static XYPlot plot(Picture picture) {
    return picture.chart(Theme.LIGHT).getXYPlot();
  }

  @Test
  void theGateIsTurnedAsItIsSeenFromBehind() {
    assertThat(ALL.get("gate").table().caption())
        .isEqualTo("Gate at 1/1000 s, seen from behind, travel left to right");
    assertThat(plot(ALL.get("gate")).getDomainAxis().isInverted()).isFalse();
    assertThat(ALL.get("gate-back").table().caption()).endsWith("travel right to left");
    assertThat(plot(ALL.get("gate-back")).getDomainAxis().isInverted()).isTrue();
    XYPlot upright = plot(ALL.get("gate-upright"));
    assertThat(ALL.get("gate-upright").table().caption()).endsWith("travel downwards");
    assertThat(upright.getOrientation()).isEqualTo(PlotOrientation.HORIZONTAL);
    assertThat(upright.getDomainAxis().isInverted()).isTrue();
    Picture upwards =
        InventedCurtainPictures.gate(new CurtainFrame(24, true, Direction.B_TO_A), List.of());
    assertThat(upwards.table().caption()).endsWith("travel upwards");
    assertThat(plot(upwards).getDomainAxis().isInverted()).isFalse();
  }

  @Test
  void aCappedPlaceHasAWordAndNoFigure() {
    DataTable table = ALL.get("gate-capped").table();
    assertThat(table.cell(2, "exposure, of the marked time")).isEqualTo("capped");
    assertThat(table.cell(0, "exposure, of the marked time")).isEqualTo("0.07 stop brighter");
    assertThat(table.cell(1, "exposure, of the marked time")).isEqualTo("0.38 stop darker");
    assertThat(
            DrawnTexts.of(ALL.get("gate-capped"), Theme.LIGHT, 680, 380).stream()
                .map(DrawnTexts.Drawn::text))
        .contains("capped", "\u22120.38");
  }

  @Test
  void aWedgeOfAFifthOfAMillisecondIsSeenAtEverySpeed() {
    for (double marked : new double[] {1e-3, 1 / 250.0, 1 / 60.0, 1 / 8.0}) {
      CurtainTrack track =
          InventedCurtainPictures.track(Phase.AS_LEFT, 36, 12.6, 12.8, 1e3 * marked, marked);
      XYPlot plot =
          plot(
              new WedgePicture(
                  InventedCurtainPictures.LYING, InventedCurtainPictures.X, List.of(track), ""));
      assertThat(0.2 / plot.getRangeAxis().getRange().getLength()).isGreaterThan(0.06);
    }
  }

  @Test
  void theBandSaysItsWindow() {
    assertThat(ALL.get("band").table().caption())
        .startsWith("Both curtains at 1/60 s: whole frame open for 3.");
    assertThat(ALL.get("band-never").table().caption()).contains("never open as a whole");
    CurtainBand one =
        new CurtainBand(
            InventedCurtainPictures.LYING,
            InventedCurtainPictures.X,
            ((GatePicture) ALL.get("gate-capped")).tracks().get(0),
            OptionalDouble.empty(),
            "");
    assertThat(one.isThere()).isFalse();
    assertThat(one.table().cell(0, "END")).isEqualTo("not known");
  }

  @Test
  void theOffsetNamesLatchAndSpeedApart() {
    assertThat(ALL.get("offsets-latch").table().caption())
        .isEqualTo("Exposure less marked time: +0.20 ms (latch), 0.0 % (curtain speed)");
    assertThat(ALL.get("offsets-speed").table().cell(4, "ms longer than marked"))
        .isEqualTo("+1.00 ms \u00b10.06 ms");
  }
}
