package org.halflight.chart;

import java.awt.Color;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.halflight.stats.Sample;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisLocation;
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
 */
public final class SpeedMap implements Picture {
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

  private final SpeedMapData data;

  public SpeedMap(SpeedMapData data) {
    this.data = data;
  }

  /** What the picture shows. */
  public SpeedMapData data() {
    return data;
  }

  /**
   * The chart. Its first data set holds the firings and its second the means, each with a row for
   * {@link #AS_FOUND} and one for {@link #AS_LEFT}; x is the place of the speed, from 0.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    int speeds = data.speeds().size();
    SymbolAxis domain =
        new SymbolAxis(
            "marked speed in seconds, slow to fast",
            data.speeds().stream().map(SpeedColumn::label).toArray(String[]::new));
    domain.setGridBandsVisible(false);
    Range places = new Range(-0.5, speeds - 0.5);
    domain.setRange(places);

    XYPlot plot = Frame.plot(domain, range(), theme);
    plot.setDataset(0, firings());
    plot.setRenderer(0, isCrowded() ? dots(theme) : firingRenderer(theme));
    plot.setDataset(1, means());
    plot.setRenderer(1, meanRenderer(theme));
    for (int place = 0; place < speeds; place++) {
      SpeedColumn speed = data.speeds().get(place);
      if (side(true) == side(false) || speed.tolerance().equals(speed.asLeftTolerance())) {
        tolerance(plot, place - COLUMN, place + COLUMN, speed.tolerance(), theme);
      } else {
        // Each run has its own firings and so its own unsure zone.
        tolerance(plot, place - COLUMN, place, speed.tolerance(true), theme);
        tolerance(plot, place, place + COLUMN, speed.tolerance(false), theme);
      }
    }
    scatterBars(plot, theme);
    shiftArrows(plot, theme);
    plot.setDomainAxis(1, strip(places, theme));
    plot.setDomainAxisLocation(1, AxisLocation.TOP_OR_LEFT);
    return Frame.chart(data.title(), plot, legend(theme), data.note(), theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (SpeedColumn speed : data.speeds()) {
      speed.asFound().ifPresent(run -> rows.add(row(speed, AS_FOUND, run)));
      speed.asLeft().ifPresent(run -> rows.add(row(speed, AS_LEFT, run)));
      if (speed.asFound().isEmpty() && speed.asLeft().isEmpty()) {
        rows.add(row(speed, "not fired", new RunAtSpeed(List.of(), Optional.empty(), 0, 0)));
      }
    }
    String level = StopsText.percent(data.meanLevel());
    return new DataTable(
        data.title(),
        List.of(
            "marked speed",
            "run",
            "mean error",
            level + " interval of the mean",
            "errors of the firings in order",
            "stuck open",
            "did not open",
            "tolerance",
            "unsure zone around each limit"),
        rows,
        data.note());
  }

  private static void tolerance(
      XYPlot plot, double from, double to, Tolerance tolerance, Theme theme) {
    plot.getRenderer(1)
        .addAnnotation(new ToleranceAnnotation(from, to, tolerance, theme), Layer.BACKGROUND);
  }

  private static List<String> row(SpeedColumn speed, String name, RunAtSpeed run) {
    Tolerance tolerance = speed.tolerance(!name.equals(AS_LEFT));
    return List.of(
        speed.label() + " s",
        name,
        run.mean().map(mean -> StopsText.of(mean.stops())).orElse("none"),
        run.mean().flatMap(Mean::interval).map(StopsText::of).orElse("not known"),
        run.firingsStops().isEmpty()
            ? "none"
            : run.firingsStops().stream().map(StopsText::of).collect(Collectors.joining(", ")),
        run.stuckOpen() + " of " + run.releases(),
        run.didNotOpen() + " of " + run.releases(),
        StopsText.of(tolerance.span()),
        tolerance.unsure().map(StopsText::around).orElse("not known"));
  }

  private StopsRange range() {
    StopsRange range = new StopsRange();
    for (SpeedColumn speed : data.speeds()) {
      range.accept(speed.tolerance());
      range.accept(speed.asLeftTolerance());
      for (Optional<RunAtSpeed> run : List.of(speed.asFound(), speed.asLeft())) {
        run.ifPresent(
            present -> {
              present.firingsStops().forEach(range::accept);
              present.mean().ifPresent(range::accept);
            });
      }
    }
    return range;
  }

  /** A run has the column to itself unless any speed has both: then each keeps to its side. */
  private double side(boolean found) {
    boolean anyFound = data.speeds().stream().anyMatch(speed -> speed.asFound().isPresent());
    boolean anyLeft = data.speeds().stream().anyMatch(speed -> speed.asLeft().isPresent());
    if (!anyFound || !anyLeft) {
      return 0;
    }
    return found ? -APART : APART;
  }

  private Optional<RunAtSpeed> run(int place, boolean found) {
    SpeedColumn speed = data.speeds().get(place);
    return found ? speed.asFound() : speed.asLeft();
  }

  private DefaultXYDataset firings() {
    DefaultXYDataset firings = new DefaultXYDataset();
    for (boolean found : new boolean[] {true, false}) {
      List<Double> xs = new ArrayList<>();
      List<Double> ys = new ArrayList<>();
      for (int place = 0; place < data.speeds().size(); place++) {
        List<Double> errors = run(place, found).map(RunAtSpeed::firingsStops).orElse(List.of());
        double widest = FIRINGS_TO - FIRINGS_FROM;
        double step = Math.min(WIDEST_STEP, widest / Math.max(1, errors.size() - 1));
        double middle = place + side(found) + (FIRINGS_FROM + FIRINGS_TO) / 2;
        for (int i = 0; i < errors.size(); i++) {
          // In order from left to right, so that a drift can be seen.
          xs.add(middle + (i - (errors.size() - 1) / 2.0) * step);
          ys.add(errors.get(i));
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
      for (int place = 0; place < data.speeds().size(); place++) {
        Optional<Mean> mean = run(place, found).flatMap(RunAtSpeed::mean);
        if (mean.isPresent()) {
          double x = place + side(found) + MEAN_AT;
          columns.get(0).add(x);
          columns.get(1).add(x - MEAN_HALF);
          columns.get(2).add(x + MEAN_HALF);
          columns.get(3).add(mean.get().stops());
          columns.get(4).add(mean.get().interval().map(Span::lowStops).orElse(Double.NaN));
          columns.get(5).add(mean.get().interval().map(Span::highStops).orElse(Double.NaN));
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
      for (int place = 0; place < data.speeds().size(); place++) {
        double middle = place + side(found);
        Optional<Span> span = run(place, found).flatMap(SpeedMap::scatter);
        span.ifPresent(
            scatter ->
                plot.getRenderer(1)
                    .addAnnotation(
                        new ScatterBar(
                            middle + FIRINGS_FROM - SCATTER_AIR,
                            middle + FIRINGS_TO + SCATTER_AIR,
                            scatter,
                            colour(found, theme)),
                        Layer.BACKGROUND));
      }
    }
  }

  /** One standard deviation either way of the mean of the firings; from two firings up. */
  private static Optional<Span> scatter(RunAtSpeed run) {
    Sample firings = Sample.of(run.firingsStops());
    return firings
        .sd()
        .known()
        .map(sd -> new Span(firings.mean().get() - sd, firings.mean().get() + sd));
  }

  private void shiftArrows(XYPlot plot, Theme theme) {
    for (int place = 0; place < data.speeds().size(); place++) {
      Optional<Mean> found = run(place, true).flatMap(RunAtSpeed::mean);
      Optional<Mean> left = run(place, false).flatMap(RunAtSpeed::mean);
      if (found.isPresent() && left.isPresent() && apart(found.get(), left.get())) {
        plot.getRenderer(1)
            .addAnnotation(
                new ShiftArrow(place + ARROW_AT, found.get().stops(), left.get().stops(), theme),
                Layer.FOREGROUND);
      }
    }
  }

  private boolean anyArrow() {
    return IntStream.range(0, data.speeds().size())
        .anyMatch(
            place -> {
              Optional<Mean> found = run(place, true).flatMap(RunAtSpeed::mean);
              Optional<Mean> left = run(place, false).flatMap(RunAtSpeed::mean);
              return found.isPresent() && left.isPresent() && apart(found.get(), left.get());
            });
  }

  private static boolean apart(Mean found, Mean left) {
    if (found.byFirings().isEmpty() || left.byFirings().isEmpty()) {
      return false;
    }
    Span first = found.byFirings().get();
    Span second = left.byFirings().get();
    return first.lowStops() > second.highStops() || second.lowStops() > first.highStops();
  }

  private EdgeStrip strip(Range places, Theme theme) {
    EdgeStrip strip = new EdgeStrip(places, theme);
    for (int place = 0; place < data.speeds().size(); place++) {
      count(strip, place, "stuck open", true, theme);
      count(strip, place, "did not open", false, theme);
    }
    return strip;
  }

  private void count(EdgeStrip strip, int place, String words, boolean stuck, Theme theme) {
    List<EdgeStrip.Line> lines = new ArrayList<>();
    for (boolean found : new boolean[] {true, false}) {
      Optional<RunAtSpeed> run = run(place, found);
      int count = run.map(r -> stuck ? r.stuckOpen() : r.didNotOpen()).orElse(0);
      if (count > 0) {
        lines.add(
            new EdgeStrip.Line(
                found ? Marks.CIRCLE : Marks.DIAMOND,
                !found,
                colour(found, theme),
                count + " of " + run.get().releases(),
                true));
      }
    }
    if (!lines.isEmpty()) {
      strip.add(place, EdgeStrip.Line.of(words));
      lines.forEach(line -> strip.add(place, line));
    }
  }

  /** Above this many firings each is a dot: hollow and filled cannot be told apart any more. */
  static final int MARKS_UP_TO = 5000;

  private boolean isCrowded() {
    return data.speeds().stream()
            .flatMap(speed -> Stream.concat(speed.asFound().stream(), speed.asLeft().stream()))
            .mapToInt(run -> run.firingsStops().size())
            .sum()
        > MARKS_UP_TO;
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

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    boolean anyFound = data.speeds().stream().anyMatch(speed -> speed.asFound().isPresent());
    boolean anyLeft = data.speeds().stream().anyMatch(speed -> speed.asLeft().isPresent());
    if (anyFound) {
      legend.add(
          Keys.mark(
              "firing " + AS_FOUND, Marks.CIRCLE, theme.background(), theme.asFound(), theme));
    }
    if (anyLeft) {
      legend.add(
          Keys.mark("firing " + AS_LEFT, Marks.DIAMOND, theme.asLeft(), theme.asLeft(), theme));
    }
    legend.add(
        Keys.bar(
            "mean with " + StopsText.percent(data.meanLevel()) + " interval",
            anyFound && !anyLeft
                ? theme.background()
                : anyFound ? theme.quietInk() : theme.asLeft(),
            anyFound && !anyLeft ? theme.asFound() : anyFound ? theme.quietInk() : theme.asLeft(),
            theme));
    if (data.speeds().stream()
        .flatMap(s -> Stream.concat(s.asFound().stream(), s.asLeft().stream()))
        .anyMatch(run -> scatter(run).isPresent())) {
      Color colour = anyFound == anyLeft ? theme.quietInk() : colour(anyFound, theme);
      legend.add(Keys.band("scatter (1 sd)", ScatterBar.pale(colour), theme));
    }
    if (anyArrow()) {
      legend.add(Keys.arrow("shift", theme));
    }
    legend.add(Keys.band("tolerance", theme.tolerance(), theme));
    if (data.speeds().stream().anyMatch(s -> s.tolerance().unsure().isPresent())) {
      legend.add(Keys.hatching("unsure zone", theme));
    }
    return legend;
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
