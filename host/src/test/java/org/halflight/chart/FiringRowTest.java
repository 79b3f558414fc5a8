package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.halflight.chart.FiringRow.Release;
import org.halflight.session.FiringConditions;
import org.halflight.session.Outcome;
import org.halflight.verdict.Fired;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

/** All figures here are invented. */
class FiringRowTest {
  private static final FiringRow ROW =
      new FiringRow(
          Fired.asFound().at("1/2", 0.61, 0.52, -0.9).run().speeds().get(0),
          "adjusting",
          List.of(
              new Release(Outcome.TIMED, OptionalDouble.of(2.4), true),
              timed(0.61),
              untimed(Outcome.STUCK_OPEN),
              timed(0.52),
              untimed(Outcome.DID_NOT_OPEN),
              timed(-0.9)),
          List.of(new Adjustment(4, "slow-speed train lifted")),
          "practice rig: invented shutter, simulated figures");

  private final XYPlot plot = ROW.chart(Theme.DARK).getXYPlot();

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
  void rejectedFiringsStayCrossedOutWithTheirReason() {
    List<Release> releases = new ArrayList<>(ROW.releases());
    releases.add(
        new Release(Outcome.TIMED, OptionalDouble.of(0.3), true, Optional.of("camera slipped")));
    releases.add(
        new Release(Outcome.STUCK_OPEN, OptionalDouble.empty(), false, Optional.of("my hand")));
    FiringRow row = new FiringRow(ROW.speed(), "adjusting", releases, List.of(), "");
    XYPlot with = row.chart(Theme.DARK).getXYPlot();
    XYDataset firings = with.getDataset(0);
    int rejected = firings.indexOf(FiringRow.REJECTED);
    assertThat(firings.getItemCount(rejected)).isEqualTo(1);
    assertThat(firings.getXValue(rejected, 0)).isEqualTo(7);
    assertThat(firings.getItemCount(firings.indexOf(FiringRow.FIRST_AFTER_REST))).isEqualTo(1);
    assertThat(((EdgeStrip) with.getDomainAxis(1)).lines().get(8.0))
        .anySatisfy(line -> assertThat(line.mark()).isSameAs(Marks.CROSSED_OUT));
    assertThat(row.table().rows().get(6)).contains("camera slipped");
    LegendItemCollection legend = with.getFixedLegendItems();
    assertThat(IntStream.range(0, legend.getItemCount()).mapToObj(i -> legend.get(i).getLabel()))
        .contains("not counted");
    assertThat(DrawnTexts.of(row, Theme.DARK, 700, 400))
        .extracting(DrawnTexts.Drawn::text)
        .contains("camera slipped");
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
    assertThat(FiringRow.OUTCOMES).extracting(Marks::of).doesNotHaveDuplicates();
  }

  @Test
  void axesHoldEverything() {
    assertThat(plot.getRangeAxis().getLowerBound()).isLessThan(-2.02);
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
              assertThat(marker.getValue()).isEqualTo(3.5);
            });
    assertThat(DrawnTexts.of(ROW, Theme.LIGHT, 900, 500))
        .extracting(DrawnTexts.Drawn::text)
        .contains("slow-speed train lifted");
  }

  @Test
  void tableSaysTheSameAsTheInput() {
    DataTable table = ROW.table();
    assertThat(table.caption())
        .isEqualTo(
            "1/2 s, adjusting: mean 0.08 stop slow, 95 % interval 2.03 stop fast to 2.18 stop"
                + " slow; tolerance 0.33 stop fast to 0.33 stop slow, grey zone "
                + StopsText.unsure(Limits.of(ROW.speed())));
    assertThat(table.headings())
        .containsExactly(
            "release",
            "outcome",
            "error",
            "conditions",
            "not counted because",
            "adjustment before it");
    assertThat(table.rows())
        .containsExactly(
            List.of("1", "timed", "2.40 stop slow", "first after rest", "", ""),
            List.of("2", "timed", "0.61 stop slow", "", "", ""),
            List.of("3", "stuck open", "no time", "", "", ""),
            List.of("4", "timed", "0.52 stop slow", "", "", "slow-speed train lifted"),
            List.of("5", "did not open", "no time", "", "", ""),
            List.of("6", "timed", "0.90 stop fast", "", "", ""));
    assertThat(table.note()).isEqualTo(ROW.note());
  }

  @Test
  void aRowWithoutAnyTimeCanStillBeDrawn() {
    FiringRow nothing =
        new FiringRow(
            Fired.asFound().hanging("1", 1).run().speeds().get(0),
            "as found",
            List.of(untimed(Outcome.STUCK_OPEN)),
            List.of(),
            "");
    XYPlot empty = nothing.chart(Theme.LIGHT).getXYPlot();
    assertThat(empty.getDataset(0).getItemCount(0)).isZero();
    assertThat(nothing.table().caption())
        .isEqualTo("1 s, as found; tolerance 0.33 stop fast to 0.33 stop slow");
    assertThat(PictureImage.png(nothing, 400, 300, 1)).isNotEmpty();
  }

  @Test
  void whatWasTimedAndHasNoTimeYetSaysSo() {
    FiringRow waiting =
        new FiringRow(ROW.speed(), "as found", List.of(untimed(Outcome.TIMED)), List.of(), "");
    assertThat(waiting.table().cell(0, "outcome")).isEqualTo("no time yet");
  }

  @Test
  void impossibleInputIsTheCallersMistake() {
    assertThatThrownBy(() -> new FiringRow(ROW.speed(), "", List.of(), List.of(), ""))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(
            () ->
                new FiringRow(
                    ROW.speed(), "", List.of(timed(0)), List.of(new Adjustment(3, "")), ""))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Adjustment(0, "")).isInstanceOf(IllegalArgumentException.class);
  }

  private static Release timed(double stops) {
    return new Release(Outcome.TIMED, OptionalDouble.of(stops), false);
  }

  @Test
  void aSpecialFiringIsASquareWithItsLetterAndALegend() {
    FiringConditions tap = FiringConditions.parse("quick-tap");
    FiringRow row =
        new FiringRow(
            ROW.speed(),
            "as found",
            List.of(
                new Release(Outcome.TIMED, OptionalDouble.of(0.3), true),
                new Release(
                    Outcome.TIMED, OptionalDouble.of(0.4), false, Optional.empty(), tap, true),
                new Release(Outcome.TIMED, OptionalDouble.of(0.5), false)),
            List.of(),
            "");
    XYPlot special = row.chart(Theme.LIGHT).getXYPlot();
    XYDataset data = special.getDataset(0);
    assertThat(data.getItemCount(data.indexOf(FiringRow.FIRST_AFTER_REST))).isEqualTo(2);
    assertThat(DrawnTexts.of(row, Theme.LIGHT, 700, 400))
        .extracting(DrawnTexts.Drawn::text)
        .contains("r", "t");
    LegendItemCollection legend = special.getFixedLegendItems();
    assertThat(IntStream.range(0, legend.getItemCount()).mapToObj(i -> legend.get(i).getLabel()))
        .contains("not in the mean", "r first after rest", "t quick tap");
    assertThat(row.table().rows().get(1)).contains("quick tap");
  }

  private static Release untimed(Outcome outcome) {
    return new Release(outcome, OptionalDouble.empty(), false);
  }
}
