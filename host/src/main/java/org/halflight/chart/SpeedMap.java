package org.halflight.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;
import org.halflight.stats.Interval;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYDotRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultIntervalXYDataset;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The whole shutter at a glance: marked speeds along the bottom, slow to fast and evenly spaced,
 * error in stops upwards. Every firing is a point, the mean a bar with its interval; as found is
 * hollow, as left filled. Firings stand in their order from left to right, on a pale bar of one
 * standard deviation either way. Where both runs have a mean and their intervals lie apart, an
 * arrow leads from the one to the other. Releases without a time are counted above their speed.
 *
 * @param title which camera or run
 * @param speeds from slow to fast, at least one
 * @param note where the numbers come from, printed at the foot; empty for none
 */
public record SpeedMap(String title, List<SpeedColumn> speeds, String note) implements Picture {
  /** Key of the data of the run as found. */
  public static final String AS_FOUND = "as found";

  /** Key of the data of the run as left. */
  public static final String AS_LEFT = "as left";

  /** Half the width of a speed's band; speeds are 1 apart. */
  private static final double COLUMN = 0.46;

  /** How far the runs are from the middle where there are two. */
  private static final double APART = 0.22;

  /** Firings lie to the left of the middle of their run, the mean to the right, none on another. */
  private static final double FIRINGS_FROM = -0.17;

  private static final double FIRINGS_TO = 0.05;
  private static final double MEAN_AT = 0.14;
  private static final double MEAN_HALF = 0.05;
  private static final double WIDEST_STEP = 0.055;

  /** How far the bar of scatter reaches beyond the firings to the left and right. */
  private static final double SCATTER_AIR = 0.015;

  /** Between the mean as found and the firings as left. */
  private static final double ARROW_AT = -0.008;

  public SpeedMap {
    speeds = List.copyOf(speeds);
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("a speed map has at least one marked speed");
    }
  }

  /**
   * The chart. Its first data set holds the firings and its second the means, each with a row for
   * {@link #AS_FOUND} and one for {@link #AS_LEFT}; x is the place of the speed, from 0.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    SymbolAxis domain =
        Frame.names(
            Words.say("chart.speeds"),
            speeds.stream().map(column -> column.speed().label()).toList());
    XYPlot plot = Frame.plot(domain, range(), strip(domain.getRange(), theme), theme);
    plot.setDataset(0, firings());
    plot.setRenderer(0, isCrowded() ? dots(theme) : firingRenderer(theme));
    plot.setDataset(1, means());
    plot.setRenderer(1, meanRenderer(theme));
    for (int place = 0; place < speeds.size(); place++) {
      Limits found = speeds.get(place).limits(true);
      Limits left = speeds.get(place).limits(false);
      if (side(true) == side(false) || found.equals(left)) {
        limits(plot, place - COLUMN, place + COLUMN, found, theme);
      } else {
        limits(plot, place - COLUMN, place, found, theme);
        limits(plot, place, place + COLUMN, left, theme);
      }
    }
    scatterBars(plot, theme);
    shiftArrows(plot, theme);
    return Frame.chart(title, plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (SpeedColumn column : speeds) {
      if (column.asFound().isPresent() || column.asLeft().isEmpty()) {
        rows.add(row(column, true));
      }
      if (column.asLeft().isPresent()) {
        rows.add(row(column, false));
      }
    }
    return new DataTable(
        title,
        List.of(
            Words.say("chart.speed"),
            Words.say("chart.run"),
            Words.say("chart.meanError"),
            Words.say("chart.interval", StopsText.percent(SpeedSummary.LEVEL)),
            Words.say("chart.errors"),
            Words.say("outcome.stuck-open"),
            Words.say("outcome.did-not-open"),
            Words.say("chart.tolerance"),
            Words.say("chart.greyEach")),
        rows,
        note);
  }

  private static void limits(XYPlot plot, double from, double to, Limits limits, Theme theme) {
    plot.getRenderer(1)
        .addAnnotation(
            new PlotAnnotation(new ToleranceBand(from, to, limits, theme)), Layer.BACKGROUND);
  }

  private static List<String> row(SpeedColumn column, boolean found) {
    Optional<SpeedSummary> run = column.run(found);
    double[] errors = run.map(its -> its.errors().values()).orElseGet(() -> new double[0]);
    Limits limits = column.limits(found);
    return List.of(
        Words.say("chart.seconds", column.speed().label()),
        run.isEmpty() ? Words.say("chart.notFired") : Sentences.phaseWithin(run.get().phase()),
        errors.length == 0
            ? Words.say("chart.none")
            : StopsText.of(run.orElseThrow().meanStops().orElseThrow()),
        run.flatMap(SpeedSummary::expandedIntervalStops)
            .map(StopsText::of)
            .orElseGet(() -> Words.say("chart.notKnown")),
        errors.length == 0
            ? Words.say("chart.none")
            : Arrays.stream(errors).mapToObj(StopsText::of).collect(Collectors.joining(", ")),
        ofReleases(run, Outcome.STUCK_OPEN),
        ofReleases(run, Outcome.DID_NOT_OPEN),
        StopsText.of(limits),
        limits.isUnsure() ? StopsText.unsure(limits) : Words.say("chart.notKnown"));
  }

  /** How many of the timed releases and those that hung or did not open came to an outcome. */
  private static String ofReleases(Optional<SpeedSummary> run, Outcome outcome) {
    return run.map(
            its ->
                Words.say(
                    "table.countOf",
                    its.count(outcome),
                    its.errors().n()
                        + its.count(Outcome.STUCK_OPEN)
                        + its.count(Outcome.DID_NOT_OPEN)))
        .orElseGet(() -> Words.say("table.countOf", 0, 0));
  }

  private StopsRange range() {
    StopsRange range = new StopsRange();
    for (SpeedColumn column : speeds) {
      range.accept(column.limits(true));
      range.accept(column.limits(false));
      column.runs().forEach(range::acceptMean);
      column.runs().flatMapToDouble(run -> Arrays.stream(run.errors().values())).forEach(range);
    }
    return range;
  }

  /** A run has the column to itself unless any speed has both: then each keeps to its side. */
  private double side(boolean found) {
    if (!any(true) || !any(false)) {
      return 0;
    }
    return found ? -APART : APART;
  }

  private boolean any(boolean found) {
    return speeds.stream().anyMatch(column -> column.run(found).isPresent());
  }

  private Stream<SpeedSummary> runs() {
    return speeds.stream().flatMap(SpeedColumn::runs);
  }

  private Optional<SpeedSummary> run(int place, boolean found) {
    return speeds.get(place).run(found);
  }

  private DefaultXYDataset firings() {
    DefaultXYDataset firings = new DefaultXYDataset();
    for (boolean found : new boolean[] {true, false}) {
      List<Double> xs = new ArrayList<>();
      List<Double> ys = new ArrayList<>();
      for (int place = 0; place < speeds.size(); place++) {
        double[] errors =
            run(place, found).map(run -> run.errors().values()).orElseGet(() -> new double[0]);
        double widest = FIRINGS_TO - FIRINGS_FROM;
        double step = Math.min(WIDEST_STEP, widest / Math.max(1, errors.length - 1));
        double middle = place + side(found) + (FIRINGS_FROM + FIRINGS_TO) / 2;
        for (int i = 0; i < errors.length; i++) {
          // In order from left to right, so that a drift can be seen.
          xs.add(middle + (i - (errors.length - 1) / 2.0) * step);
          ys.add(errors[i]);
        }
      }
      firings.addSeries(found ? AS_FOUND : AS_LEFT, new double[][] {array(xs), array(ys)});
    }
    return firings;
  }

  private DefaultIntervalXYDataset means() {
    DefaultIntervalXYDataset means = new DefaultIntervalXYDataset();
    for (boolean found : new boolean[] {true, false}) {
      List<List<Double>> columns = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        columns.add(new ArrayList<>());
      }
      for (int place = 0; place < speeds.size(); place++) {
        Optional<SpeedSummary> run = run(place, found);
        OptionalDouble mean = mean(run);
        if (mean.isPresent()) {
          Optional<Interval> interval = run.flatMap(SpeedSummary::expandedIntervalStops);
          double x = place + side(found) + MEAN_AT;
          columns.get(0).add(x);
          columns.get(1).add(x - MEAN_HALF);
          columns.get(2).add(x + MEAN_HALF);
          columns.get(3).add(mean.getAsDouble());
          columns.get(4).add(interval.map(Interval::low).orElse(Double.NaN));
          columns.get(5).add(interval.map(Interval::high).orElse(Double.NaN));
        }
      }
      means.addSeries(
          found ? AS_FOUND : AS_LEFT,
          columns.stream().map(SpeedMap::array).toArray(double[][]::new));
    }
    return means;
  }

  private void scatterBars(XYPlot plot, Theme theme) {
    for (boolean found : new boolean[] {true, false}) {
      for (int place = 0; place < speeds.size(); place++) {
        double middle = place + side(found);
        run(place, found)
            .filter(SpeedMap::scatters)
            .ifPresent(
                run -> {
                  double mean = run.meanStops().orElseThrow();
                  double sd = run.scatterStops().orElseThrow();
                  plot.getRenderer(1)
                      .addAnnotation(
                          new PlotAnnotation(
                              new ScatterBar(
                                  middle + FIRINGS_FROM - SCATTER_AIR,
                                  middle + FIRINGS_TO + SCATTER_AIR,
                                  mean - sd,
                                  mean + sd,
                                  colour(found, theme))),
                          Layer.BACKGROUND);
                });
      }
    }
  }

  /** Bars are one standard deviation either way of the mean; from two firings up. */
  private static boolean scatters(SpeedSummary run) {
    return run.scatterStops().isPresent();
  }

  private static OptionalDouble mean(Optional<SpeedSummary> run) {
    return run.map(SpeedSummary::meanStops).orElseGet(OptionalDouble::empty);
  }

  private void shiftArrows(XYPlot plot, Theme theme) {
    for (int place = 0; place < speeds.size(); place++) {
      if (isShifted(speeds.get(place))) {
        plot.getRenderer(1)
            .addAnnotation(
                new PlotAnnotation(
                    new ShiftArrow(
                        place + ARROW_AT,
                        mean(run(place, true)).orElseThrow(),
                        mean(run(place, false)).orElseThrow(),
                        theme)),
                Layer.FOREGROUND);
      }
    }
  }

  /** Two runs on one rig are held against each other by the scatter of their firings alone. */
  private static boolean isShifted(SpeedColumn column) {
    Optional<Interval> found = column.asFound().flatMap(SpeedSummary::meanIntervalStops);
    Optional<Interval> left = column.asLeft().flatMap(SpeedSummary::meanIntervalStops);
    return found.isPresent()
        && left.isPresent()
        && (found.get().low() > left.get().high() || left.get().low() > found.get().high());
  }

  private EdgeStrip strip(Range places, Theme theme) {
    EdgeStrip strip = new EdgeStrip(places, theme);
    for (int place = 0; place < speeds.size(); place++) {
      count(strip, place, Outcome.STUCK_OPEN, theme);
      count(strip, place, Outcome.DID_NOT_OPEN, theme);
    }
    return strip;
  }

  private void count(EdgeStrip strip, int place, Outcome outcome, Theme theme) {
    List<EdgeStrip.Line> lines = new ArrayList<>();
    for (boolean found : new boolean[] {true, false}) {
      Optional<SpeedSummary> run = run(place, found);
      if (run.filter(its -> its.count(outcome) > 0).isPresent()) {
        lines.add(
            new EdgeStrip.Line(
                found ? Marks.CIRCLE : Marks.DIAMOND,
                !found,
                colour(found, theme),
                ofReleases(run, outcome),
                true));
      }
    }
    if (!lines.isEmpty()) {
      strip.add(place, EdgeStrip.Line.of(Sentences.outcome(outcome)));
      lines.forEach(line -> strip.add(place, line));
    }
  }

  /** Above this many firings each is a dot: hollow and filled cannot be told apart any more. */
  static final int MARKS_UP_TO = 5000;

  private boolean isCrowded() {
    return runs().mapToInt(run -> run.errors().n()).sum() > MARKS_UP_TO;
  }

  private static XYDotRenderer dots(Theme theme) {
    XYDotRenderer renderer = new XYDotRenderer();
    renderer.setDotWidth(2);
    renderer.setDotHeight(2);
    renderer.setSeriesPaint(0, colour(true, theme));
    renderer.setSeriesPaint(1, colour(false, theme));
    return renderer;
  }

  private static XYLineAndShapeRenderer firingRenderer(Theme theme) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    for (int row = 0; row < 2; row++) {
      boolean found = row == 0;
      Keys.dress(
          renderer,
          row,
          found ? Marks.CIRCLE : Marks.DIAMOND,
          found ? theme.background() : colour(false, theme),
          colour(found, theme),
          theme);
    }
    return renderer;
  }

  private static MeanBarRenderer meanRenderer(Theme theme) {
    MeanBarRenderer renderer = new MeanBarRenderer(theme);
    renderer.setSeriesPaint(0, colour(true, theme));
    renderer.setSeriesPaint(1, colour(false, theme));
    return renderer;
  }

  private static Color colour(boolean found, Theme theme) {
    return found ? theme.asFound() : theme.asLeft();
  }

  /** Whether firings while adjusting are in the place of those as found. */
  private boolean isOfAdjusting() {
    return speeds.stream()
        .flatMap(column -> column.run(true).stream())
        .anyMatch(run -> run.phase() == Phase.ADJUSTING);
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    boolean anyFound = any(true);
    boolean anyLeft = any(false);
    if (anyFound) {
      legend.add(
          Keys.mark(
              Words.say(isOfAdjusting() ? "chart.firingAdjusting" : "chart.firingFound"),
              Marks.CIRCLE,
              theme.background(),
              theme.asFound(),
              theme));
    }
    if (anyLeft) {
      legend.add(
          Keys.mark(
              Words.say("chart.firingLeft"), Marks.DIAMOND, theme.asLeft(), theme.asLeft(), theme));
    }
    legend.add(
        Keys.bar(
            Words.say("chart.meanInterval", StopsText.percent(SpeedSummary.LEVEL)),
            anyFound && !anyLeft
                ? theme.background()
                : anyFound ? theme.quietInk() : theme.asLeft(),
            anyFound && !anyLeft ? theme.asFound() : anyFound ? theme.quietInk() : theme.asLeft(),
            theme));
    if (runs().anyMatch(SpeedMap::scatters)) {
      Color colour = anyFound == anyLeft ? theme.quietInk() : colour(anyFound, theme);
      legend.add(Keys.band(Words.say("chart.scatter"), Theme.pale(colour), theme));
    }
    if (speeds.stream().anyMatch(SpeedMap::isShifted)) {
      legend.add(Keys.arrow(Words.say("chart.shift"), theme));
    }
    legend.add(Keys.band(Words.say("chart.tolerance"), theme.tolerance(), theme));
    if (speeds.stream().anyMatch(column -> column.limits(true).isUnsure())) {
      legend.add(Keys.hatching(Words.say("chart.grey"), theme));
    }
    return legend;
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
