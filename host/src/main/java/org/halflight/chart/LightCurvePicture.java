package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.halflight.exposure.CurveExposure;
import org.halflight.exposure.CurveExposure.HalfLight;
import org.halflight.exposure.CurveExposure.Measured;
import org.halflight.exposure.CurvePoints;
import org.halflight.exposure.LevelPair;
import org.halflight.exposure.Ramp;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.Range;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * The light of one opening over time: the curve, the two levels, the half-light points, and the
 * rectangle of full light that gives the same exposure. It stands about the middle of the
 * half-light points and has the area of the curve.
 */
public final class LightCurvePicture implements Picture {
  /** Key of the data of the curve. */
  public static final String LIGHT = "light";

  /** Key of the data of the half-light points. */
  public static final String HALF_LIGHT = "half light";

  private static final double LOWEST = -0.04;
  private static final double HIGHEST = 1.12;
  private static final double AIR = 0.06;

  private final String title;
  private final CurvePoints points;
  private final CurveExposure exposure;
  private final LevelPair levels;
  private final String note;

  /**
   * @param title whose curve it is
   * @param points of the curve
   * @param exposure what it comes to
   * @param levels of the edges
   * @param note where the figures come from
   */
  public LightCurvePicture(
      String title, CurvePoints points, CurveExposure exposure, LevelPair levels, String note) {
    this.title = title;
    this.points = points;
    this.exposure = exposure;
    this.levels = levels;
    this.note = note;
  }

  /** A rectangle of full light, in milliseconds. */
  private record Rectangle(double fromMillis, double toMillis) {}

  @Override
  public JFreeChart chart(Theme theme) {
    NumberAxis time = new NumberAxis(Words.say("chart.millis"));
    double[] millis = millis();
    Range shown = shown(millis);
    time.setRange(shown);
    time.setNumberFormatOverride(Frame.plain());
    NumberAxis light = new NumberAxis(Words.say("chart.light"));
    light.setRange(
        LOWEST, Math.max(HIGHEST, exposure.measured().map(Measured::peak).orElse(1.0) + 0.05));
    light.setTickUnit(new NumberTickUnit(0.25));
    XYPlot plot = Frame.bare(time, light, theme);
    plot.setDataset(data(millis));
    plot.setRenderer(renderer(theme));
    Labels labels = new Labels(theme);
    level(plot, labels, levels.low(), Words.say("chart.low"), theme);
    level(plot, labels, levels.high(), Words.say("chart.high"), theme);
    plot.addAnnotation(labels.annotation());
    rectangle()
        .ifPresent(
            box ->
                plot.getRenderer()
                    .addAnnotation(
                        new XYBoxAnnotation(
                            box.fromMillis(),
                            0,
                            box.toMillis(),
                            1,
                            new BasicStroke(1),
                            theme.tolerance(),
                            theme.tolerance()),
                        Layer.BACKGROUND));
    return Frame.chart(title, plot, legend(theme), note, theme);
  }

  @Override
  public DataTable table() {
    List<List<String>> rows = new ArrayList<>();
    if (exposure instanceof CurveExposure.Refused refused) {
      rows.add(List.of(Words.say("chart.noFigure"), Words.of("curve.refused", refused.reason())));
    }
    exposure.measured().ifPresent(measured -> addFigures(rows, measured));
    rows.add(List.of(Words.say("chart.low"), percent(levels.low())));
    rows.add(List.of(Words.say("chart.high"), percent(levels.high())));
    return new DataTable(
        title, List.of(Words.say("chart.figure"), Words.say("chart.value")), rows, note);
  }

  private static void addFigures(List<List<String>> rows, Measured measured) {
    rows.add(
        List.of(
            Words.say("chart.effective"),
            millis(measured.effectiveSeconds())
                + " \u00b1 "
                + String.format(Locale.ROOT, "%.3f ms", 1e3 * measured.toleranceSeconds())));
    rows.add(List.of(Words.say("chart.total"), millis(measured.totalSeconds())));
    rows.add(List.of(Words.say("chart.efficiency"), percent(measured.efficiency())));
    rows.add(List.of(Words.say("chart.greatest"), percent(measured.peak())));
    rows.add(
        List.of(
            Words.say("chart.fullyOpen"),
            measured.openedFully() ? Words.say("chart.yes") : Words.say("chart.no")));
    measured
        .plateauLight()
        .ifPresent(at -> rows.add(List.of(Words.say("chart.plateau"), percent(at))));
    measured
        .halfLight()
        .ifPresent(
            half -> {
              rows.add(List.of(Words.say("chart.halfRising"), millis(half.riseSeconds())));
              rows.add(List.of(Words.say("chart.halfFalling"), millis(half.fallSeconds())));
            });
    measured
        .opening()
        .ifPresent(ramp -> rows.add(List.of(Words.say("chart.opening"), words(ramp))));
    measured
        .closing()
        .ifPresent(ramp -> rows.add(List.of(Words.say("chart.closing"), words(ramp))));
  }

  private static String words(Ramp ramp) {
    return Words.say(
        "chart.ramp", millis(ramp.seconds()), String.format(Locale.ROOT, "%.2f", ramp.power()));
  }

  private static String millis(double seconds) {
    return String.format(Locale.ROOT, "%.3f ms", 1e3 * seconds);
  }

  private static String percent(double part) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * part);
  }

  private double[] millis() {
    double[] millis = points.seconds();
    for (int i = 0; i < millis.length; i++) {
      millis[i] *= 1e3;
    }
    return millis;
  }

  /** The opening with some dark on both sides; all that there is where nothing was measured. */
  private Range shown(double[] millis) {
    double first = millis.length == 0 ? 0 : millis[0];
    double last = millis.length == 0 ? 1 : Math.max(millis[millis.length - 1], first + 0.1);
    if (exposure instanceof Measured measured) {
      double from = 1e3 * measured.firstLightSeconds();
      double air = 1e3 * AIR * measured.totalSeconds();
      return new Range(from - air, from + 1e3 * measured.totalSeconds() + air);
    }
    return new Range(first, last);
  }

  private DefaultXYDataset data(double[] millis) {
    DefaultXYDataset data = new DefaultXYDataset();
    data.addSeries(LIGHT, new double[][] {millis, points.light()});
    Optional<HalfLight> half = exposure.measured().flatMap(Measured::halfLight);
    data.addSeries(
        HALF_LIGHT,
        half.isPresent()
            ? new double[][] {
              {1e3 * half.get().riseSeconds(), 1e3 * half.get().fallSeconds()}, {0.5, 0.5}
            }
            : new double[2][0]);
    return data;
  }

  private static XYLineAndShapeRenderer renderer(Theme theme) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setSeriesPaint(0, theme.asLeft());
    renderer.setSeriesStroke(0, new BasicStroke(2.2f));
    renderer.setSeriesLinesVisible(1, false);
    renderer.setSeriesShapesVisible(1, true);
    Keys.dress(renderer, 1, Marks.CIRCLE, theme.background(), theme.asFound(), theme);
    return renderer;
  }

  private Optional<Rectangle> rectangle() {
    return exposure
        .measured()
        .map(
            measured -> {
              double middle =
                  measured
                      .halfLight()
                      .map(half -> (half.riseSeconds() + half.fallSeconds()) / 2)
                      .orElse(measured.firstLightSeconds() + measured.totalSeconds() / 2);
              double reach = measured.effectiveSeconds() / 2;
              return new Rectangle(1e3 * (middle - reach), 1e3 * (middle + reach));
            });
  }

  private static void level(XYPlot plot, Labels labels, double level, String words, Theme theme) {
    Color quiet = theme.quietInk();
    plot.addRangeMarker(new ValueMarker(level, quiet, Frame.dashed(1.2f, 6, 5)), Layer.BACKGROUND);
    // In the middle the curve is high above both.
    labels.atLevel(words, level, quiet, 0.5);
  }

  private LegendItemCollection legend(Theme theme) {
    LegendItemCollection legend = new LegendItemCollection();
    legend.add(
        Keys.line(Words.say("chart.lightLine"), new Line2D.Double(-9, 0, 9, 0), theme.asLeft()));
    if (exposure.measured().isPresent()) {
      legend.add(Keys.band(Words.say("chart.asFull"), theme.tolerance(), theme));
    }
    if (exposure.measured().flatMap(Measured::halfLight).isPresent()) {
      legend.add(
          Keys.mark(
              Words.say("chart.half"), Marks.CIRCLE, theme.background(), theme.asFound(), theme));
    }
    return legend;
  }
}
