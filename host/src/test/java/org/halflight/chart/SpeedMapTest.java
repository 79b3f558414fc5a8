package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.data.xy.IntervalXYDataset;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

/** All figures here are invented. */
class SpeedMapTest {
  private static final RunAtSpeed SLOW_FOUND =
      new RunAtSpeed(List.of(1.2, 2.6, 0.9), Optional.of(Mean.of(1.57, -0.65, 3.79)), 2, 0);
  private static final RunAtSpeed SLOW_LEFT =
      new RunAtSpeed(List.of(0.1, 0.05, -0.04), Optional.of(Mean.of(0.04, -0.14, 0.21)), 0, 0);
  private static final RunAtSpeed FAST_FOUND =
      new RunAtSpeed(List.of(-0.31), Optional.of(new Mean(-0.31, Optional.empty())), 0, 1);
  private static final SpeedMapData DATA =
      new SpeedMapData(
          "Invented folding camera",
          List.of(
              new SpeedColumn(
                  "1",
                  Tolerance.plusMinus(1 / 3.0).withUnsure(0.05),
                  Optional.of(SLOW_FOUND),
                  Optional.of(SLOW_LEFT)),
              new SpeedColumn(
                  "1/60", Tolerance.plusMinus(1 / 3.0), Optional.empty(), Optional.empty()),
              new SpeedColumn(
                  "1/500", Tolerance.plusMinus(0.5), Optional.of(FAST_FOUND), Optional.empty())),
          0.95,
          "practice rig: invented shutter, simulated figures");

  private final JFreeChart chart = new SpeedMap(DATA).chart(Theme.LIGHT);
  private final XYPlot plot = chart.getXYPlot();

  @Test
  void everyFiringIsAPointAtItsSpeed() {
    XYDataset firings = plot.getDataset(0);
    int found = row(firings, SpeedMap.AS_FOUND);
    int left = row(firings, SpeedMap.AS_LEFT);
    assertThat(values(firings, found)).containsExactly(1.2, 2.6, 0.9, -0.31);
    assertThat(values(firings, left)).containsExactly(0.1, 0.05, -0.04);
    assertThat(places(firings, found)).containsExactly(0L, 0L, 0L, 2L);
    assertThat(places(firings, left)).containsExactly(0L, 0L, 0L);
    for (int i = 1; i < 3; i++) {
      assertThat(firings.getXValue(found, i)).isGreaterThan(firings.getXValue(found, i - 1));
    }
    // The runs keep apart within the column.
    assertThat(firings.getXValue(found, 2)).isLessThan(firings.getXValue(left, 0));
  }

  @Test
  void manyFiringsStayInTheirColumn() {
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      errors.add(i / 1000.0);
    }
    RunAtSpeed run = new RunAtSpeed(errors, Optional.of(Mean.of(0.1, 0.09, 0.11)), 0, 0);
    SpeedColumn column =
        new SpeedColumn("1/8", Tolerance.plusMinus(0.3), Optional.of(run), Optional.of(run));
    XYPlot many =
        new SpeedMap(new SpeedMapData("many", List.of(column, column), 0.95, ""))
            .chart(Theme.DARK)
            .getXYPlot();
    for (int data = 0; data < 2; data++) {
      XYDataset set = many.getDataset(data);
      for (int row = 0; row < 2; row++) {
        for (int i = 0; i < set.getItemCount(row); i++) {
          double x = set.getXValue(row, i);
          assertThat(Math.abs(x - Math.rint(x))).isLessThan(0.45);
        }
      }
    }
    assertThat(many.getDataset(0).getItemCount(0)).isEqualTo(400);
  }

  @Test
  void meansHaveTheirIntervalsAndOnlyThoseThatAreKnown() {
    IntervalXYDataset means = (IntervalXYDataset) plot.getDataset(1);
    int found = row(means, SpeedMap.AS_FOUND);
    int left = row(means, SpeedMap.AS_LEFT);
    assertThat(values(means, found)).containsExactly(1.57, -0.31);
    assertThat(values(means, left)).containsExactly(0.04);
    assertThat(means.getStartYValue(found, 0)).isEqualTo(-0.65);
    assertThat(means.getEndYValue(found, 0)).isEqualTo(3.79);
    assertThat(means.getStartYValue(found, 1)).isNaN();
    assertThat(means.getEndYValue(left, 0)).isEqualTo(0.21);
  }

  @Test
  void axisOfStopsHoldsFiringsIntervalsTolerancesAndZero() {
    assertThat(plot.getRangeAxis().getLowerBound()).isLessThan(-0.65);
    assertThat(plot.getRangeAxis().getUpperBound()).isGreaterThan(3.79);
    assertThat(plot.getRangeAxis().isInverted()).isFalse();

    RunAtSpeed right = new RunAtSpeed(List.of(0.0), Optional.empty(), 0, 0);
    Tolerance wide = Tolerance.plusMinus(0.8).withUnsure(0.3);
    SpeedColumn column = new SpeedColumn("1", wide, Optional.of(right), Optional.empty());
    XYPlot other =
        new SpeedMap(new SpeedMapData("", List.of(column), 0.95, ""))
            .chart(Theme.LIGHT)
            .getXYPlot();
    assertThat(other.getRangeAxis().getLowerBound()).isLessThan(-1.1);
    assertThat(other.getRangeAxis().getUpperBound()).isGreaterThan(1.1);
  }

  @Test
  void anIntervalOfTwoFiringsThatIsEndlessIsCutOff() {
    RunAtSpeed two =
        new RunAtSpeed(
            List.of(0.2, 2.2),
            Optional.of(new Mean(1.2, Optional.of(new Span(-11.5, 13.9)))),
            0,
            0);
    SpeedColumn column =
        new SpeedColumn("1", Tolerance.plusMinus(0.3), Optional.of(two), Optional.empty());
    XYPlot other =
        new SpeedMap(new SpeedMapData("", List.of(column), 0.95, ""))
            .chart(Theme.LIGHT)
            .getXYPlot();
    assertThat(other.getRangeAxis().getLowerBound()).isBetween(-1.0, 0.2);
    assertThat(other.getRangeAxis().getUpperBound()).isBetween(2.2, 3.0);
  }

  @Test
  void speedsStandEvenlyInTheirOrder() {
    SymbolAxis domain = (SymbolAxis) plot.getDomainAxis();
    assertThat(domain.getSymbols()).containsExactly("1", "1/60", "1/500");
    assertThat(domain.getLowerBound()).isEqualTo(-0.5);
    assertThat(domain.getUpperBound()).isEqualTo(2.5);
    assertThat(plot.getDomainAxis(1).getRange()).isEqualTo(domain.getRange());
    assertThat(domain.getLabel()).contains("seconds");
    assertThat(plot.getRangeAxis().getLabel()).contains("stops").contains("+ slow");
  }

  @Test
  void everySpeedHasItsOwnTolerance() {
    List<ToleranceAnnotation> bands = annotations(plot, ToleranceAnnotation.class);
    assertThat(bands)
        .extracting(ToleranceAnnotation::tolerance)
        .containsExactlyElementsOf(DATA.speeds().stream().map(SpeedColumn::tolerance).toList());
    assertThat(bands).extracting(ToleranceAnnotation::from).containsExactly(-0.46, 0.54, 1.54);
  }

  @Test
  void scatterIsABarOfOneStandardDeviationEitherWay() {
    // 1.2, 2.6 and 0.9: mean 47/30, standard deviation 0.907377 (by hand).
    List<ScatterBar> bars = annotations(plot, ScatterBar.class);
    assertThat(bars).hasSize(2);
    assertThat(bars.get(0).span().lowStops()).isCloseTo(47 / 30.0 - 0.907377, within(1e-6));
    assertThat(bars.get(0).span().highStops()).isCloseTo(47 / 30.0 + 0.907377, within(1e-6));
  }

  @Test
  void anArrowShowsTheShiftWhereTheIntervalsLieApart() {
    assertThat(annotations(plot, ShiftArrow.class)).isEmpty();
    SpeedColumn cured =
        new SpeedColumn(
            "1",
            Tolerance.plusMinus(0.3),
            Optional.of(
                new RunAtSpeed(List.of(1.0, 1.1), Optional.of(Mean.of(1.05, 0.5, 1.6)), 0, 0)),
            Optional.of(SLOW_LEFT));
    XYPlot both =
        new SpeedMap(new SpeedMapData("", List.of(cured), 0.95, "")).chart(Theme.LIGHT).getXYPlot();
    List<ShiftArrow> arrows = annotations(both, ShiftArrow.class);
    assertThat(arrows).hasSize(1);
    assertThat(arrows.get(0).fromStops()).isEqualTo(1.05);
    assertThat(arrows.get(0).toStops()).isEqualTo(0.04);
    assertThat(words(both.getLegendItems())).contains("shift");
  }

  private static <T> List<T> annotations(XYPlot of, Class<T> kind) {
    Collection<?> all = ((AbstractXYItemRenderer) of.getRenderer(1)).getAnnotations();
    return all.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  @Test
  void releasesWithoutATimeAreCountedAboveTheirSpeed() {
    EdgeStrip strip = (EdgeStrip) plot.getDomainAxis(1);
    assertThat(strip.lines().keySet()).containsExactly(0.0, 2.0);
    assertThat(strip.lines().get(0.0))
        .extracting(EdgeStrip.Line::text)
        .containsExactly("stuck open", "2 of 5");
    assertThat(strip.lines().get(2.0))
        .extracting(EdgeStrip.Line::text)
        .containsExactly("did not open", "1 of 2");
    assertThat(strip.lines().get(0.0).get(1).filled()).isFalse();
  }

  @Test
  void asFoundIsHollowAndAsLeftFilledAndTheShapesDiffer() {
    XYLineAndShapeRenderer renderer = (XYLineAndShapeRenderer) plot.getRenderer(0);
    assertThat(renderer.getSeriesFillPaint(0)).isEqualTo(Theme.LIGHT.background());
    assertThat(renderer.getSeriesFillPaint(1)).isEqualTo(Theme.LIGHT.asLeft());
    assertThat(renderer.getSeriesShape(0)).isNotEqualTo(renderer.getSeriesShape(1));
    assertThat(renderer.getSeriesShape(0).getBounds2D().getWidth())
        .isCloseTo(Theme.LIGHT.letterSize() * 0.66, within(0.5));
  }

  @Test
  void legendNamesOnlyWhatIsThere() {
    assertThat(words(plot.getLegendItems()))
        .containsExactly(
            "firing as found",
            "firing as left",
            "mean with 95 % interval",
            "scatter (1 sd)",
            "tolerance",
            "unsure zone");
    SpeedColumn plain =
        new SpeedColumn("1", Tolerance.plusMinus(0.3), Optional.empty(), Optional.of(SLOW_LEFT));
    XYPlot other =
        new SpeedMap(new SpeedMapData("", List.of(plain), 0.9, "")).chart(Theme.LIGHT).getXYPlot();
    assertThat(words(other.getLegendItems()))
        .containsExactly(
            "firing as left", "mean with 90 % interval", "scatter (1 sd)", "tolerance");
  }

  @Test
  void noteStandsAtTheFoot() {
    assertThat(chart.getSubtitles())
        .filteredOn(TextTitle.class::isInstance)
        .extracting(title -> ((TextTitle) title).getText())
        .containsExactly("practice rig: invented shutter, simulated figures");
    assertThat(chart.getTitle().getText()).isEqualTo("Invented folding camera");
  }

  @Test
  void tableSaysTheSameAsTheInput() {
    DataTable table = new SpeedMap(DATA).table();
    assertThat(table.caption()).isEqualTo(DATA.title());
    assertThat(table.note()).isEqualTo(DATA.note());
    assertThat(table.rows())
        .containsExactly(
            List.of(
                "1 s",
                "as found",
                "1.57 stop slow",
                "0.65 stop fast to 3.79 stop slow",
                "1.20 stop slow, 2.60 stop slow, 0.90 stop slow",
                "2 of 5",
                "0 of 5",
                "0.33 stop fast to 0.33 stop slow",
                "\u00b10.05 stop"),
            List.of(
                "1 s",
                "as left",
                "0.04 stop slow",
                "0.14 stop fast to 0.21 stop slow",
                "0.10 stop slow, 0.05 stop slow, 0.04 stop fast",
                "0 of 3",
                "0 of 3",
                "0.33 stop fast to 0.33 stop slow",
                "\u00b10.05 stop"),
            List.of(
                "1/60 s",
                "not fired",
                "none",
                "not known",
                "none",
                "0 of 0",
                "0 of 0",
                "0.33 stop fast to 0.33 stop slow",
                "not known"),
            List.of(
                "1/500 s",
                "as found",
                "0.31 stop fast",
                "not known",
                "0.31 stop fast",
                "0 of 2",
                "1 of 2",
                "0.50 stop fast to 0.50 stop slow",
                "not known"));
    assertThat(table.cell(0, "95 % interval of the mean"))
        .isEqualTo("0.65 stop fast to 3.79 stop slow");
  }

  @Test
  void impossibleInputIsTheCallersMistake() {
    assertThatThrownBy(() -> new SpeedMapData("", List.of(), 0.95, ""))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new RunAtSpeed(List.of(Double.NaN), Optional.empty(), 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new RunAtSpeed(List.of(), Optional.empty(), -1, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Span(1, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Tolerance.plusMinus(0.3).withUnsure(0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static int row(XYDataset data, String key) {
    return data.indexOf(key);
  }

  private static List<Double> values(XYDataset data, int row) {
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < data.getItemCount(row); i++) {
      values.add(data.getYValue(row, i));
    }
    return values;
  }

  private static List<Long> places(XYDataset data, int row) {
    List<Long> places = new ArrayList<>();
    for (int i = 0; i < data.getItemCount(row); i++) {
      places.add(Math.round(data.getXValue(row, i)));
    }
    return places;
  }

  private static List<String> words(LegendItemCollection legend) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < legend.getItemCount(); i++) {
      words.add(legend.get(i).getLabel());
    }
    return words;
  }
}
