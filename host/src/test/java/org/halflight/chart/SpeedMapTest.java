package org.halflight.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.speeds.MarkedSpeed;
import org.halflight.speeds.Reference;
import org.halflight.speeds.Tolerance;
import org.halflight.verdict.Fired;
import org.halflight.verdict.SpeedSummary;
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
  private static final SpeedSummary SLOW_FOUND =
      only(Fired.asFound().hanging("1", 2, 1.2, 2.6, 0.9));
  private static final SpeedSummary SLOW_LEFT = only(Fired.asLeft().at("1", 0.1, 0.05, -0.04));
  private static final SpeedSummary FAST_FOUND =
      only(
          Fired.asFound()
              .at(
                  "1/500",
                  Reference.EXACT,
                  Map.of(Outcome.DID_NOT_OPEN, 1),
                  OptionalDouble.empty(),
                  -0.31));
  private static final SpeedMap MAP =
      new SpeedMap(
          "Invented folding camera",
          List.of(
              column("1", Optional.of(SLOW_FOUND), Optional.of(SLOW_LEFT)),
              column("1/60", Optional.empty(), Optional.empty()),
              column("1/500", Optional.of(FAST_FOUND), Optional.empty())),
          "practice rig: invented shutter, simulated figures");

  private final JFreeChart chart = MAP.chart(Theme.LIGHT);
  private final XYPlot plot = chart.getXYPlot();

  @Test
  void everyFiringIsAPointAtItsSpeed() {
    XYDataset firings = plot.getDataset(0);
    int found = row(firings, Phase.AS_FOUND);
    int left = row(firings, Phase.AS_LEFT);
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
    double[] errors = new double[200];
    Arrays.setAll(errors, i -> i / 1000.0);
    SpeedColumn column =
        column(
            "1/8",
            Optional.of(only(Fired.asFound().at("1/8", errors))),
            Optional.of(only(Fired.asLeft().at("1/8", errors))));
    XYPlot many = plot(Theme.DARK, column, column);
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
    int found = row(means, Phase.AS_FOUND);
    int left = row(means, Phase.AS_LEFT);
    assertThat(values(means, found)).hasSize(2);
    assertThat(means.getYValue(found, 0)).isCloseTo(4.7 / 3, within(1e-9));
    assertThat(values(means, left)).hasSize(1);
    // 4.302653 (Student, 2 degrees) times 0.907377 / sqrt(3) either way of 47/30, by hand.
    assertThat(means.getStartYValue(found, 0)).isCloseTo(-0.6874, within(1e-3));
    assertThat(means.getEndYValue(found, 0)).isCloseTo(3.8207, within(1e-3));
    assertThat(means.getStartYValue(found, 1)).isNaN();
    assertThat(means.getEndYValue(left, 0)).isCloseTo(0.2129, within(1e-3));
  }

  @Test
  void axisOfStopsHoldsFiringsIntervalsTolerancesAndZero() {
    assertThat(plot.getRangeAxis().getLowerBound()).isLessThan(-0.65);
    assertThat(plot.getRangeAxis().getUpperBound()).isGreaterThan(3.79);
    assertThat(plot.getRangeAxis().isInverted()).isFalse();

    XYPlot other =
        plot(
            Theme.LIGHT,
            new SpeedColumn(MarkedSpeed.parse("1"), new Tolerance(1.1, 1.1), Map.of()));
    assertThat(other.getRangeAxis().getLowerBound()).isLessThan(-1.1);
    assertThat(other.getRangeAxis().getUpperBound()).isGreaterThan(1.1);
  }

  @Test
  void anIntervalOfTwoFiringsThatIsEndlessIsCutOff() {
    SpeedSummary two = only(Fired.asFound().at("1", 0.2, 2.2));
    assertThat(two.expandedIntervalStops().orElseThrow().low()).isLessThan(-11);
    XYPlot other = plot(Theme.LIGHT, column("1", Optional.of(two), Optional.empty()));
    assertThat(other.getRangeAxis().getLowerBound()).isBetween(-1.6, 0.2);
    assertThat(other.getRangeAxis().getUpperBound()).isBetween(2.2, 3.5);
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
    List<ToleranceBand> bands = annotations(plot, ToleranceBand.class);
    assertThat(bands)
        .extracting(ToleranceBand::limits)
        .containsExactly(
            Limits.of(SLOW_FOUND),
            Limits.of(SLOW_LEFT),
            Limits.of(Tolerance.THIRD),
            Limits.of(FAST_FOUND));
    assertThat(bands)
        .extracting(band -> Math.round(band.from() * 100))
        .containsExactly(-46L, 0L, 54L, 154L);
  }

  @Test
  void scatterIsABarOfOneStandardDeviationEitherWay() {
    // 1.2, 2.6 and 0.9: mean 47/30, standard deviation 0.907377 (by hand).
    List<ScatterBar> bars = annotations(plot, ScatterBar.class);
    assertThat(bars).hasSize(2);
    assertThat(bars.get(0).lowStops()).isCloseTo(47 / 30.0 - 0.907377, within(1e-6));
    assertThat(bars.get(0).highStops()).isCloseTo(47 / 30.0 + 0.907377, within(1e-6));
  }

  @Test
  void anArrowShowsTheShiftWhereTheIntervalsLieApart() {
    assertThat(annotations(plot, ShiftArrow.class)).isEmpty();
    SpeedSummary slow = only(Fired.asFound().at("1", 1.0, 1.1));
    XYPlot both = plot(Theme.LIGHT, column("1", Optional.of(slow), Optional.of(SLOW_LEFT)));
    List<ShiftArrow> arrows = annotations(both, ShiftArrow.class);
    assertThat(arrows).hasSize(1);
    assertThat(arrows.get(0).fromStops()).isEqualTo(1.05, within(1e-9));
    assertThat(arrows.get(0).toStops()).isEqualTo(0.11 / 3, within(1e-9));
    assertThat(words(both.getLegendItems())).contains("shift");
  }

  private static <T> List<T> annotations(XYPlot of, Class<T> kind) {
    Collection<?> all = ((AbstractXYItemRenderer) of.getRenderer(1)).getAnnotations();
    return all.stream()
        .filter(PlotAnnotation.class::isInstance)
        .map(annotation -> ((PlotAnnotation) annotation).drawing())
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
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
    assertThat(renderer.getSeriesFillPaint(2)).isEqualTo(Theme.LIGHT.asLeft());
    assertThat(
            List.of(
                renderer.getSeriesShape(0),
                renderer.getSeriesShape(1),
                renderer.getSeriesShape(2),
                renderer.getSeriesShape(3)))
        .doesNotHaveDuplicates();
    assertThat(renderer.getSeriesShape(0).getBounds2D().getWidth())
        .isCloseTo(Theme.LIGHT.letterSize() * 0.66, within(0.5));
  }

  @Test
  void legendNamesOnlyWhatIsThere() {
    assertThat(words(plot.getLegendItems()))
        .containsExactly(
            "firing as found",
            "firing as left",
            "stuck open",
            "did not open",
            "mean with 95 % interval",
            "scatter (1 sd)",
            "tolerance",
            "grey zone");
    SpeedSummary one = only(Fired.asLeft().at("1", 0.1));
    XYPlot other = plot(Theme.LIGHT, column("1", Optional.empty(), Optional.of(one)));
    assertThat(words(other.getLegendItems()))
        .containsExactly("firing as left", "mean with 95 % interval", "tolerance");
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
    DataTable table = MAP.table();
    assertThat(table.caption()).isEqualTo(MAP.title());
    assertThat(table.note()).isEqualTo(MAP.note());
    assertThat(table.rows())
        .containsExactly(
            List.of(
                "1 s",
                "as found",
                "1.57 stop slow",
                "0.69 stop fast to 3.82 stop slow",
                "1.20 stop slow, 2.60 stop slow, 0.90 stop slow",
                "2 of 5",
                "0 of 5",
                "0.33 stop fast to 0.33 stop slow",
                StopsText.unsure(Limits.of(SLOW_FOUND)),
                ""),
            List.of(
                "1 s",
                "as left",
                "0.04 stop slow",
                "0.14 stop fast to 0.21 stop slow",
                "0.10 stop slow, 0.05 stop slow, 0.04 stop fast",
                "0 of 3",
                "0 of 3",
                "0.33 stop fast to 0.33 stop slow",
                StopsText.unsure(Limits.of(SLOW_LEFT)),
                ""),
            List.of(
                "1/60 s",
                "not fired",
                "none",
                "not known",
                "none",
                "0 of 0",
                "0 of 0",
                "0.33 stop fast to 0.33 stop slow",
                "not known",
                ""),
            List.of(
                "1/500 s",
                "as found",
                "0.31 stop fast",
                "not known",
                "0.31 stop fast",
                "0 of 2",
                "1 of 2",
                "0.33 stop fast to 0.33 stop slow",
                "not known",
                ""));
    assertThat(table.cell(0, "95 % interval of the mean"))
        .isEqualTo("0.69 stop fast to 3.82 stop slow");
  }

  @Test
  void impossibleInputIsTheCallersMistake() {
    assertThatThrownBy(() -> new SpeedMap("", List.of(), ""))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static SpeedSummary only(Fired fired) {
    return fired.run().speeds().get(0);
  }

  private static SpeedColumn column(
      String speed, Optional<SpeedSummary> asFound, Optional<SpeedSummary> asLeft) {
    Map<Phase, SpeedSummary> runs = new EnumMap<>(Phase.class);
    asFound.ifPresent(run -> runs.put(Phase.AS_FOUND, run));
    asLeft.ifPresent(run -> runs.put(Phase.AS_LEFT, run));
    return new SpeedColumn(MarkedSpeed.parse(speed), Tolerance.THIRD, runs);
  }

  private static XYPlot plot(Theme theme, SpeedColumn... columns) {
    return new SpeedMap("", List.of(columns), "").chart(theme).getXYPlot();
  }

  private static int row(XYDataset data, Phase key) {
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
