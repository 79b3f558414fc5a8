package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The releases of one marked speed one after the other: error in stops upwards, the mean as a line
 * with its interval. The first firing after rest has its own mark, releases without a time are
 * marked at the upper edge.
 */
public final class FiringRow implements Picture {
  /** Key of the data of firings that may count. */
  public static final String FIRINGS = "firing";

  /** Key of the data of the first firing after rest. */
  public static final String FIRST_AFTER_REST = "first firing after rest";

  /** Up to this many releases each has its number on the axis. */
  private static final int NUMBERED_UP_TO = 30;

  private final FiringRowData data;

  public FiringRow(FiringRowData data) {
    this.data = data;
  }

  /** What the picture shows. */
  public FiringRowData data() {
    return data;
  }

  /**
   * The chart. Its data set holds the timed firings, one row for {@link #FIRINGS} and one for
   * {@link #FIRST_AFTER_REST}; x is the number of the release, from 1.
   */
  @Override
  public JFreeChart chart(Theme theme) {
    Range places = new Range(0.5, data.releases().size() + 0.5);
    NumberAxis domain = new NumberAxis("release, in order");
    domain.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    domain.setRange(places);

    XYPlot plot = Frame.plot(domain, range(), theme);
    if (data.releases().size() <= NUMBERED_UP_TO) {
      domain.setTickUnit(new NumberTickUnit(1));
    }
    plot.setDataset(0, firings());
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    Keys.dress(renderer, 0, mark(), filling(theme), colour(theme), theme);
    Keys.dress(renderer, 1, Marks.SQUARE, theme.background(), theme.rest(), theme);
    plot.setRenderer(0, renderer);
    renderer.addAnnotation(
        new ToleranceAnnotation(
            places.getLowerBound(), places.getUpperBound(), data.tolerance(), theme),
        Layer.BACKGROUND);
    data.mean()
        .ifPresent(
            mean ->
                renderer.addAnnotation(new MeanAnnotation(mean, colour(theme)), Layer.BACKGROUND));
    for (int i = 0; i < data.adjustments().size(); i++) {
      plot.addDomainMarker(marker(i, theme), Layer.BACKGROUND);
    }
    plot.setDomainAxis(1, strip(places, theme));
    plot.setDomainAxisLocation(1, AxisLocation.TOP_OR_LEFT);
    return Frame.chart(title(), plot, legend(theme), data.note(), theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < data.releases().size(); i++) {
      Release release = data.releases().get(i);
      int number = i + 1;
      String work =
          String.join(
              ", ",
              data.adjustments().stream()
                  .filter(adjustment -> adjustment.beforeRelease() == number)
                  .map(Adjustment::words)
                  .toList());
      rows.add(
          List.of(
              Integer.toString(number),
              release.outcome().words(),
              release.stops().isPresent() ? StopsText.of(release.stops().getAsDouble()) : "no time",
              release.firstAfterRest() ? "first after rest" : "",
              work));
    }
    return new DataTable(
        summary(),
        List.of("release", "outcome", "error", "rest", "adjustment before it"),
        rows,
        data.note());
  }

  private String title() {
    String title = data.speedLabel() + " s, " + data.runName();
    if (data.mean().isEmpty()) {
      return title;
    }
    Mean mean = data.mean().get();
    return title + ": mean " + StopsText.of(mean.stops());
  }

  private String summary() {
    String interval =
        data.mean()
            .flatMap(Mean::interval)
            .map(
                span ->
                    ", " + StopsText.percent(data.meanLevel()) + " interval " + StopsText.of(span))
            .orElse("");
    String unsure =
        data.tolerance().unsure().map(zone -> ", unsure zone " + StopsText.around(zone)).orElse("");
    return title() + interval + "; tolerance " + StopsText.of(data.tolerance().span()) + unsure;
  }

  private StopsRange range() {
    StopsRange range = new StopsRange();
    range.accept(data.tolerance());
    data.mean().ifPresent(range::accept);
    data.releases().forEach(release -> release.stops().ifPresent(range));
    return range;
  }

  private DefaultXYDataset firings() {
    DefaultXYDataset firings = new DefaultXYDataset();
    for (boolean first : new boolean[] {false, true}) {
      List<double[]> points = new ArrayList<>();
      for (int i = 0; i < data.releases().size(); i++) {
        Release release = data.releases().get(i);
        if (release.stops().isPresent() && release.firstAfterRest() == first) {
          points.add(new double[] {i + 1, release.stops().getAsDouble()});
        }
      }
      firings.addSeries(
          first ? FIRST_AFTER_REST : FIRINGS,
          new double[][] {
            points.stream().mapToDouble(point -> point[0]).toArray(),
            points.stream().mapToDouble(point -> point[1]).toArray()
          });
    }
    return firings;
  }

  private EdgeStrip strip(Range places, Theme theme) {
    EdgeStrip strip = new EdgeStrip(places, theme);
    for (int i = 0; i < data.releases().size(); i++) {
      Release release = data.releases().get(i);
      if (release.stops().isEmpty()) {
        strip.add(i + 1, EdgeStrip.Line.ifThereIsRoom(release.outcome().words()));
        strip.add(
            i + 1, new EdgeStrip.Line(Marks.of(release.outcome()), false, colour(theme), "", true));
      }
    }
    return strip;
  }

  private ValueMarker marker(int index, Theme theme) {
    Adjustment adjustment = data.adjustments().get(index);
    ValueMarker marker =
        new ValueMarker(
            adjustment.beforeRelease() - 0.5,
            theme.quietInk(),
            new BasicStroke(
                1.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 3}, 0));
    Frame.label(marker, adjustment.words(), theme.ink(), theme);
    // Towards the right end the words stand left of their line, so that they are not cut off.
    boolean late = adjustment.beforeRelease() > 0.7 * data.releases().size();
    marker.setLabelAnchor(late ? RectangleAnchor.BOTTOM_LEFT : RectangleAnchor.BOTTOM_RIGHT);
    marker.setLabelTextAnchor(late ? TextAnchor.BOTTOM_RIGHT : TextAnchor.BOTTOM_LEFT);
    double up = 4 + index % 3 * 1.3 * theme.letterSize();
    marker.setLabelOffset(new RectangleInsets(up, 5, up, 5));
    return marker;
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    legend.add(Keys.mark(FIRINGS, mark(), filling(theme), colour(theme), theme));
    if (data.releases().stream().anyMatch(r -> r.firstAfterRest() && r.stops().isPresent())) {
      legend.add(
          Keys.mark(
              FIRST_AFTER_REST + ", not in the mean",
              Marks.SQUARE,
              theme.background(),
              theme.rest(),
              theme));
    }
    Set<ReleaseOutcome> untimed = EnumSet.noneOf(ReleaseOutcome.class);
    data.releases().stream()
        .filter(release -> release.stops().isEmpty())
        .forEach(release -> untimed.add(release.outcome()));
    for (ReleaseOutcome outcome : untimed) {
      legend.add(
          Keys.mark(outcome.words(), Marks.of(outcome), theme.background(), colour(theme), theme));
    }
    if (data.mean().isPresent()) {
      legend.add(
          Keys.line(
              data.mean().get().interval().isPresent()
                  ? "mean with " + StopsText.percent(data.meanLevel()) + " interval"
                  : "mean",
              new Line2D.Double(-9, 0, 9, 0),
              colour(theme)));
    }
    legend.add(Keys.band("tolerance", theme.tolerance(), theme));
    if (data.tolerance().unsure().isPresent()) {
      legend.add(Keys.hatching("unsure zone", theme));
    }
    return legend;
  }

  private Shape mark() {
    return data.asLeft() ? Marks.DIAMOND : Marks.CIRCLE;
  }

  private Color colour(Theme theme) {
    return data.asLeft() ? theme.asLeft() : theme.asFound();
  }

  private Color filling(Theme theme) {
    return data.asLeft() ? colour(theme) : theme.background();
  }
}
