package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

/** All figures here are invented. */
class FiringRowTest {
  private static final FiringRowData DATA =
      new FiringRowData(
          "1/2",
          "adjusting",
          false,
          List.of(
              Release.firstAfterRest(2.4),
              Release.timed(0.61),
              Release.untimed(ReleaseOutcome.STUCK_OPEN),
              Release.timed(0.52),
              Release.untimed(ReleaseOutcome.DID_NOT_OPEN),
              Release.timed(-0.9)),
          Optional.of(Mean.of(0.08, -2.0, 2.1)),
          0.95,
          Tolerance.plusMinus(1 / 3.0).withUnsure(0.04),
          List.of(new Adjustment(4, "slow-speed train lifted")),
          "practice rig: invented shutter, simulated figures");

  private final XYPlot plot = new FiringRow(DATA).chart(Theme.DARK).getXYPlot();

  @Test
  void timedFiringsStandAtTheirNumber() {
    XYDataset firings = plot.getDataset(0);
    int row = firings.indexOf(FiringRow.FIRINGS);
    assertThat(firings.getItemCount(row)).isEqualTo(3);
    double[][] expected = {{2, 0.61}, {4, 0.52}, {6, -0.9}};
    for (int i = 0; i < 3; i++) {
      assertThat(firings.getXValue(row, i)).isEqualTo(expected[i][0]);
      assertThat(firings.getYValue(row, i)).isEqualTo(expected[i][1]);
    }
  }

  @Test
  void theFirstAfterRestStandsApart() {
    XYDataset firings = plot.getDataset(0);
    int row = firings.indexOf(FiringRow.FIRST_AFTER_REST);
    assertThat(firings.getItemCount(row)).isEqualTo(1);
    assertThat(firings.getXValue(row, 0)).isEqualTo(1);
    assertThat(firings.getYValue(row, 0)).isEqualTo(2.4);
  }

  @Test
  void releasesWithoutATimeAreMarkedAtTheEdge() {
    EdgeStrip strip = (EdgeStrip) plot.getDomainAxis(1);
    assertThat(strip.lines().keySet()).containsExactly(3.0, 5.0);
    assertThat(strip.lines().get(3.0).get(0).text()).isEqualTo("stuck open");
    assertThat(strip.lines().get(3.0).get(1).mark()).isEqualTo(Marks.UP);
    assertThat(strip.lines().get(5.0).get(1).mark()).isEqualTo(Marks.CROSS);
    assertThat(strip.getRange()).isEqualTo(plot.getDomainAxis().getRange());
  }

  @Test
  void outcomesAreToldApartByShape() {
    assertThat(List.of(ReleaseOutcome.values()))
        .extracting(Marks::of)
        .doesNotHaveDuplicates()
        .hasSize(ReleaseOutcome.values().length);
  }

  @Test
  void axesHoldEverything() {
    assertThat(plot.getRangeAxis().getLowerBound()).isLessThan(-2.0);
    assertThat(plot.getRangeAxis().getUpperBound()).isGreaterThan(2.4);
    assertThat(plot.getDomainAxis().getLowerBound()).isEqualTo(0.5);
    assertThat(plot.getDomainAxis().getUpperBound()).isEqualTo(6.5);
  }

  @Test
  void adjustmentsStandBetweenReleases() {
    Collection<?> markers = plot.getDomainMarkers(Layer.BACKGROUND);
    assertThat(markers)
        .singleElement()
        .isInstanceOfSatisfying(
            ValueMarker.class,
            marker -> {
              assertThat(marker.getLabel()).isEqualTo("slow-speed train lifted");
              assertThat(marker.getValue()).isEqualTo(3.5);
            });
  }

  @Test
  void tableSaysTheSameAsTheInput() {
    DataTable table = new FiringRow(DATA).table();
    assertThat(table.caption())
        .isEqualTo(
            "1/2 s, adjusting: mean 0.08 stop slow, 95 % interval 2.00 stop fast to 2.10 stop"
                + " slow; tolerance 0.33 stop fast to 0.33 stop slow, unsure zone \u00b10.04"
                + " stop");
    assertThat(table.headings())
        .containsExactly("release", "outcome", "error", "rest", "adjustment before it");
    assertThat(table.rows())
        .containsExactly(
            List.of("1", "timed", "2.40 stop slow", "first after rest", ""),
            List.of("2", "timed", "0.61 stop slow", "", ""),
            List.of("3", "stuck open", "no time", "", ""),
            List.of("4", "timed", "0.52 stop slow", "", "slow-speed train lifted"),
            List.of("5", "did not open", "no time", "", ""),
            List.of("6", "timed", "0.90 stop fast", "", ""));
    assertThat(table.note()).isEqualTo(DATA.note());
  }

  @Test
  void aRowWithoutAnyTimeCanStillBeDrawn() {
    FiringRowData nothing =
        new FiringRowData(
            "1",
            "as found",
            false,
            List.of(Release.untimed(ReleaseOutcome.STUCK_OPEN)),
            Optional.empty(),
            0.95,
            Tolerance.plusMinus(0.3),
            List.of(),
            "");
    XYPlot empty = new FiringRow(nothing).chart(Theme.LIGHT).getXYPlot();
    assertThat(empty.getDataset(0).getItemCount(0)).isZero();
    assertThat(new FiringRow(nothing).table().caption())
        .isEqualTo("1 s, as found; tolerance 0.30 stop fast to 0.30 stop slow");
    assertThat(PictureImage.png(new FiringRow(nothing), 400, 300, 1)).isNotEmpty();
  }

  @Test
  void impossibleInputIsTheCallersMistake() {
    assertThatThrownBy(() -> new Release(ReleaseOutcome.STUCK_OPEN, OptionalDouble.of(1), false))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Release(ReleaseOutcome.TIMED, OptionalDouble.empty(), false))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Adjustment(0, "")).isInstanceOf(IllegalArgumentException.class);
  }
}
