package org.halflight.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
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
import org.halflight.verdict.RejectedFiring;
import org.halflight.verdict.SpeedSummary;
import org.halflight.words.Sentences;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYDotRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultIntervalXYDataset;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * The whole shutter at a glance: marked speeds along the bottom, slow to fast and evenly spaced,
 * error in stops upwards. Every firing is a point, the mean a bar with its interval; as found is
 * hollow, as left filled. Each run has its own part of the column. Its firings stand in their order
 * from left to right, on a pale bar of one standard deviation either way; the rejected ones come
 * last, crossed out. Where as found and as left both have a mean and their intervals lie apart, an
 * arrow leads from the one to the other. Releases without a time are counted above their speed.
 *
 * @param title which camera or run
 * @param speeds from slow to fast, at least one
 * @param note where the numbers come from, printed at the foot; empty for none
 */
public record SpeedMap(String title, List<SpeedColumn> speeds, String note) implements Picture {
  /** What stands in each series of the data, in its order. */
  static final List<Phase> SERIES = List.of(Phase.values());

  /** Key of the data of rejected firings; the keys of the others are the phases. */
  public static final String REJECTED = "rejected";

  /** Half the width of a speed's band; speeds are 1 apart. */
  private static final double COLUMN = 0.46;

  /**
   * Firings lie to the left of the middle of their run, the mean to the right, none on another.
   * These are parts of the room of a run.
   */
  private static final double FIRINGS_FROM = -0.44;

  private static final double FIRINGS_TO = 0.22;
  private static final double MEAN_AT = 0.36;
  private static final double MEAN_HALF = 0.1;

  /** How far neighbours stand apart at most, in columns. */
  private static final double WIDEST_STEP = 0.09;

  /** How far the bar of scatter reaches beyond the firings to the left and right. */
  private static final double SCATTER_AIR = 0.04;

  /** Marks shrink to this many pixels where they stand close. */
  private static final double LEAST_MARK = 5;

  private static final double MARK_PER_STEP = 1.1;

  /** What is counted above its speed. */
  private static final List<Outcome> COUNTED = List.of(Outcome.STUCK_OPEN, Outcome.DID_NOT_OPEN);

  public SpeedMap {
    speeds = List.copyOf(speeds);
    if (speeds.isEmpty()) {
      throw new IllegalArgumentException("a speed map has at least one marked speed");
    }
  }

  /**
   * The chart. Its first data set holds the firings and its second the means, each with a row for
   * every {@link Phase}, and the first one for {@link #REJECTED}; x is the place of the speed, from
   * 0.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    SymbolAxis domain =
        Frame.names(
            Words.say("chart.speeds"),
            speeds.stream().map(column -> column.speed().label()).toList());
    XYPlot plot = Frame.plot(domain, range(), strip(domain.getRange(), theme), theme);
    plot.setDataset(0, firings());
    plot.setRenderer(0, isCrowded() ? dots(theme) : new FiringMarks(theme, narrowestStep()));
    plot.setDataset(1, means());
    MeanBarRenderer bars = new MeanBarRenderer(theme);
    for (Phase phase : SERIES) {
      bars.setSeriesPaint(SERIES.indexOf(phase), theme.of(phase));
    }
    plot.setRenderer(1, bars);
    for (int place = 0; place < speeds.size(); place++) {
      limits(plot, place, theme);
    }
    scatterBars(plot, theme);
    shiftArrows(plot, theme);
    plot.addAnnotation(reasons(theme).annotation());
    return Frame.chart(title, plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (SpeedColumn column : speeds) {
      for (Phase phase : Phase.values()) {
        if (column.run(phase).isPresent()) {
          rows.add(row(column, phase));
        }
      }
      if (column.runs().isEmpty()) {
        rows.add(row(column, Phase.AS_FOUND));
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
            Words.say("chart.greyEach"),
            Words.say("chart.rejected")),
        rows,
        note);
  }

  /** The band of each run over its part of the column; one band where all are alike. */
  private void limits(XYPlot plot, int place, Theme theme) {
    SpeedColumn column = speeds.get(place);
    List<Phase> phases = phases();
    if (phases.stream().map(column::limits).distinct().count() <= 1) {
      Limits all = column.limits(phases.isEmpty() ? Phase.AS_FOUND : phases.get(0));
      band(plot, place - COLUMN, place + COLUMN, all, theme);
      return;
    }
    for (Phase phase : phases) {
      double middle = place + side(phase);
      band(plot, middle - room() / 2, middle + room() / 2, column.limits(phase), theme);
    }
  }

  private static void band(XYPlot plot, double from, double to, Limits limits, Theme theme) {
    plot.getRenderer(1)
        .addAnnotation(
            new PlotAnnotation(new ToleranceBand(from, to, limits, theme)), Layer.BACKGROUND);
  }

  private static List<String> row(SpeedColumn column, Phase phase) {
    Optional<SpeedSummary> run = column.run(phase);
    double[] errors = run.map(its -> its.errors().values()).orElseGet(() -> new double[0]);
    Limits limits = column.limits(phase);
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
        limits.isUnsure() ? StopsText.unsure(limits) : Words.say("chart.notKnown"),
        run.stream()
            .flatMap(its -> its.releases().rejected().stream())
            .map(Sentences::rejected)
            .collect(Collectors.joining(", ")));
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
      for (Phase phase : Phase.values()) {
        range.accept(column.limits(phase));
      }
      column.all().forEach(range::acceptMean);
      column.all().flatMapToDouble(run -> Arrays.stream(run.errors().values())).forEach(range);
      column
          .all()
          .flatMapToDouble(run -> rejected(run).stream().mapToDouble(x -> x))
          .forEach(range);
    }
    return range;
  }

  /** The runs that any speed has, in the order of the work. */
  private List<Phase> phases() {
    return Arrays.stream(Phase.values())
        .filter(phase -> speeds.stream().anyMatch(column -> column.run(phase).isPresent()))
        .toList();
  }

  /** How much of a column a run has, in columns. */
  private double room() {
    return 2 * COLUMN / Math.max(1, phases().size());
  }

  /** Where the middle of a run is, from the middle of its column. */
  private double side(Phase phase) {
    return -COLUMN + (phases().indexOf(phase) + 0.5) * room();
  }

  private Stream<SpeedSummary> runs() {
    return speeds.stream().flatMap(SpeedColumn::all);
  }

  private Optional<SpeedSummary> run(int place, Phase phase) {
    return speeds.get(place).run(phase);
  }

  /** The errors of the rejected firings that have one. */
  private static List<Double> rejected(SpeedSummary run) {
    return run.releases().rejected().stream()
        .flatMap(firing -> firing.errorStops().stream().boxed())
        .toList();
  }

  /** How far the firings of a run stand apart, in columns. */
  private double step(int firings) {
    return Math.min(WIDEST_STEP, room() * (FIRINGS_TO - FIRINGS_FROM) / Math.max(1, firings - 1));
  }

  private static int points(SpeedSummary run) {
    return run.errors().n() + rejected(run).size();
  }

  private double narrowestStep() {
    return step(runs().mapToInt(SpeedMap::points).max().orElse(1));
  }

  /** Where the firing of an index stands, in order from left to right, so that a drift shows. */
  private double x(int place, Phase phase, int index, int of) {
    double middle = place + side(phase) + room() * (FIRINGS_FROM + FIRINGS_TO) / 2;
    return middle + (index - (of - 1) / 2.0) * step(of);
  }

  private DefaultXYDataset firings() {
    DefaultXYDataset firings = new DefaultXYDataset();
    List<double[]> crossed = new ArrayList<>();
    for (Phase phase : Phase.values()) {
      List<double[]> points = new ArrayList<>();
      for (int place = 0; place < speeds.size(); place++) {
        if (run(place, phase).isPresent()) {
          SpeedSummary run = run(place, phase).get();
          double[] errors = run.errors().values();
          for (int i = 0; i < errors.length; i++) {
            points.add(new double[] {x(place, phase, i, points(run)), errors[i]});
          }
          crossed.addAll(crossed(place, phase, run));
        }
      }
      firings.addSeries(phase, Frame.columns(points));
    }
    firings.addSeries(REJECTED, Frame.columns(crossed));
    return firings;
  }

  private List<double[]> crossed(int place, Phase phase, SpeedSummary run) {
    List<double[]> points = new ArrayList<>();
    for (double error : rejected(run)) {
      int index = run.errors().n() + points.size();
      points.add(new double[] {x(place, phase, index, points(run)), error});
    }
    return points;
  }

  /** Why firings are crossed out, where there is room. */
  private Labels reasons(Theme theme) {
    Labels labels = new Labels(theme);
    if (isCrowded() || runs().allMatch(run -> rejected(run).isEmpty())) {
      return labels;
    }
    DefaultXYDataset all = firings();
    for (int row = 0; row < all.getSeriesCount(); row++) {
      for (int i = 0; i < all.getItemCount(row); i++) {
        labels.keepOff(all.getXValue(row, i), all.getYValue(row, i));
      }
    }
    for (int place = 0; place < speeds.size(); place++) {
      for (Phase phase : phases()) {
        if (run(place, phase).isPresent()) {
          SpeedSummary run = run(place, phase).get();
          List<double[]> points = crossed(place, phase, run);
          List<RejectedFiring> timed =
              run.releases().rejected().stream().filter(f -> f.errorStops().isPresent()).toList();
          for (int i = 0; i < points.size(); i++) {
            labels.beside(timed.get(i).reason(), points.get(i)[0], points.get(i)[1]);
          }
        }
      }
    }
    return labels;
  }

  private DefaultIntervalXYDataset means() {
    DefaultIntervalXYDataset means = new DefaultIntervalXYDataset();
    for (Phase phase : Phase.values()) {
      List<List<Double>> columns = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        columns.add(new ArrayList<>());
      }
      for (int place = 0; place < speeds.size(); place++) {
        Optional<SpeedSummary> run = run(place, phase);
        OptionalDouble mean = mean(run);
        if (mean.isPresent()) {
          Optional<Interval> interval = run.flatMap(SpeedSummary::expandedIntervalStops);
          double x = place + side(phase) + room() * MEAN_AT;
          columns.get(0).add(x);
          columns.get(1).add(x - room() * MEAN_HALF);
          columns.get(2).add(x + room() * MEAN_HALF);
          columns.get(3).add(mean.getAsDouble());
          columns.get(4).add(interval.map(Interval::low).orElse(Double.NaN));
          columns.get(5).add(interval.map(Interval::high).orElse(Double.NaN));
        }
      }
      means.addSeries(phase, columns.stream().map(SpeedMap::array).toArray(double[][]::new));
    }
    return means;
  }

  private void scatterBars(XYPlot plot, Theme theme) {
    for (Phase phase : phases()) {
      for (int place = 0; place < speeds.size(); place++) {
        double middle = place + side(phase);
        run(place, phase)
            .filter(SpeedMap::scatters)
            .ifPresent(
                run -> {
                  double mean = run.meanStops().orElseThrow();
                  double sd = run.scatterStops().orElseThrow();
                  plot.getRenderer(1)
                      .addAnnotation(
                          new PlotAnnotation(
                              new ScatterBar(
                                  middle + room() * (FIRINGS_FROM - SCATTER_AIR),
                                  middle + room() * (FIRINGS_TO + SCATTER_AIR),
                                  mean - sd,
                                  mean + sd,
                                  theme.of(phase))),
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
                        place + side(Phase.AS_LEFT) - room() / 2,
                        mean(run(place, Phase.AS_FOUND)).orElseThrow(),
                        mean(run(place, Phase.AS_LEFT)).orElseThrow(),
                        theme)),
                Layer.FOREGROUND);
      }
    }
  }

  /** Two runs on one rig are held against each other by the scatter of their firings alone. */
  private static boolean isShifted(SpeedColumn column) {
    Optional<Interval> found = column.run(Phase.AS_FOUND).flatMap(SpeedSummary::meanIntervalStops);
    Optional<Interval> left = column.run(Phase.AS_LEFT).flatMap(SpeedSummary::meanIntervalStops);
    return found.isPresent()
        && left.isPresent()
        && (found.get().low() > left.get().high() || left.get().low() > found.get().high());
  }

  private EdgeStrip strip(Range places, Theme theme) {
    EdgeStrip strip = new EdgeStrip(places, theme);
    for (int place = 0; place < speeds.size(); place++) {
      for (Outcome outcome : COUNTED) {
        count(strip, place, outcome, theme);
      }
    }
    return strip;
  }

  private void count(EdgeStrip strip, int place, Outcome outcome, Theme theme) {
    List<EdgeStrip.Line> lines = new ArrayList<>();
    for (Phase phase : phases()) {
      Optional<SpeedSummary> run = run(place, phase);
      if (run.filter(its -> its.count(outcome) > 0).isPresent()) {
        String count = ofReleases(run, outcome);
        lines.add(
            new EdgeStrip.Line(
                Marks.of(outcome),
                phase == Phase.AS_LEFT,
                theme.of(phase),
                count,
                String.valueOf(run.get().count(outcome))));
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
    for (Phase phase : SERIES) {
      renderer.setSeriesPaint(SERIES.indexOf(phase), theme.of(phase));
    }
    renderer.setSeriesPaint(Phase.values().length, theme.quietInk());
    return renderer;
  }

  /** Marks that are smaller where they stand close, so that each can be told apart. */
  private static final class FiringMarks extends XYLineAndShapeRenderer {
    private static final long serialVersionUID = 1L;

    private final transient Theme theme;
    private final double step;

    FiringMarks(Theme theme, double step) {
      super(false, true);
      this.theme = theme;
      this.step = step;
      dress(Keys.markSize(theme));
    }

    private void dress(double size) {
      for (Phase phase : SERIES) {
        Keys.dress(
            this,
            SERIES.indexOf(phase),
            Marks.of(phase),
            theme.filling(phase),
            theme.of(phase),
            size);
      }
      Keys.dress(
          this,
          Phase.values().length,
          Marks.CROSSED_OUT,
          theme.background(),
          theme.quietInk(),
          size);
    }

    @Override
    public XYItemRendererState initialise(
        Graphics2D graphics,
        Rectangle2D area,
        XYPlot plot,
        XYDataset data,
        PlotRenderingInfo info) {
      double apart = step * area.getWidth() / plot.getDomainAxis().getRange().getLength();
      dress(Math.min(Keys.markSize(theme), Math.max(LEAST_MARK, MARK_PER_STEP * apart)));
      return super.initialise(graphics, area, plot, data, info);
    }
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    List<Phase> phases = phases();
    for (Phase phase : phases) {
      legend.add(
          Keys.mark(
              Words.of("chart.firing", phase),
              Marks.of(phase),
              theme.filling(phase),
              theme.of(phase),
              theme));
    }
    for (Outcome outcome : COUNTED) {
      if (runs().anyMatch(run -> run.count(outcome) > 0)) {
        legend.add(
            Keys.mark(
                Sentences.outcome(outcome),
                Marks.of(outcome),
                theme.background(),
                theme.ink(),
                theme));
      }
    }
    if (runs().anyMatch(run -> !rejected(run).isEmpty())) {
      legend.add(Keys.rejected(theme));
    }
    Color colour = phases.size() == 1 ? theme.of(phases.get(0)) : theme.quietInk();
    Color filling = phases.size() == 1 ? theme.filling(phases.get(0)) : theme.quietInk();
    legend.add(
        Keys.bar(
            Words.say("chart.meanInterval", StopsText.percent(SpeedSummary.LEVEL)),
            filling,
            colour,
            theme));
    if (runs().anyMatch(SpeedMap::scatters)) {
      legend.add(Keys.band(Words.say("chart.scatter"), Theme.pale(colour), theme));
    }
    if (speeds.stream().anyMatch(SpeedMap::isShifted)) {
      legend.add(Keys.arrow(Words.say("chart.shift"), theme));
    }
    legend.add(Keys.band(Words.say("chart.tolerance"), theme.tolerance(), theme));
    if (speeds.stream().anyMatch(column -> column.limits(Phase.AS_FOUND).isUnsure())) {
      legend.add(Keys.hatching(Words.say("chart.grey"), theme));
    }
    return legend;
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
