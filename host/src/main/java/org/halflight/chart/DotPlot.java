package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/** Dots and lines over a common axis; what the pictures of a calibration share. */
final class DotPlot {
  private final Theme theme;
  private final Labels labels;
  private final XYSeriesCollection data = new XYSeriesCollection();
  private final XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer();
  private final XYPlot plot;

  DotPlot(ValueAxis domain, String rangeLabel, Theme theme) {
    this.theme = theme;
    labels = new Labels(theme);
    NumberAxis range = new NumberAxis(rangeLabel);
    range.setAutoRangeIncludesZero(true);
    plot = Frame.bare(domain, range, theme);
    plot.setDataset(data);
    plot.setRenderer(renderer);
    plot.addAnnotation(labels.annotation());
  }

  /** Plus and minus at the axis upwards. */
  void signed() {
    signed("0.0");
  }

  /** The same with so many digits as the pattern has. */
  void signed(String pattern) {
    ((NumberAxis) plot.getRangeAxis()).setNumberFormatOverride(Frame.signed(pattern));
  }

  /** Points, each with its x and y. */
  void dots(String name, List<double[]> points, Color colour) {
    dots(name, of(points, 0), of(points, 1), colour);
  }

  void dots(String name, double[] x, double[] y, Color colour) {
    add(name, x, y, colour, true, false);
  }

  void line(String name, double[] x, double[] y, Color colour) {
    add(name, x, y, colour, false, true);
  }

  /** Points, each with its x and y, joined by a line, full or hollow. */
  void joined(String name, List<double[]> points, Color colour, boolean full) {
    joined(name, of(points, 0), of(points, 1), colour, full);
  }

  private static double[] of(List<double[]> points, int coordinate) {
    return points.stream().mapToDouble(point -> point[coordinate]).toArray();
  }

  /** Dots joined by a line, full or hollow. */
  void joined(String name, double[] x, double[] y, Color colour, boolean full) {
    int index = data.getSeriesCount();
    add(name, x, y, colour, true, true);
    renderer.setUseFillPaint(true);
    renderer.setSeriesFillPaint(index, full ? colour : theme.background());
    renderer.setSeriesShapesFilled(index, true);
    renderer.setSeriesShape(index, new Ellipse2D.Double(-5, -5, 10, 10));
  }

  /** Standing bars from zero up, their name above each; {@code reach} is half their width. */
  void bars(String name, List<double[]> tops, Color colour, double reach) {
    square(name, colour);
    for (double[] top : tops) {
      plot.addAnnotation(
          new XYBoxAnnotation(
              top[0] - reach, 0, top[0] + reach, top[1], new BasicStroke(0), colour, colour));
      labels.above(
          String.format(Locale.ROOT, "%.1f: %s", top[1], name), top[0], top[1], theme.ink());
    }
  }

  /** Words above a place, in a colour that means something. */
  void words(String words, double x, double y, Color colour) {
    labels.above(words, x, y, colour);
  }

  /** Upright whiskers from one value to another; {@code reach} is half the width of their ends. */
  void whiskers(double[] x, double[] from, double[] to, Color colour, double reach) {
    BasicStroke stroke = new BasicStroke(1.6f);
    for (int i = 0; i < x.length; i++) {
      plot.addAnnotation(new XYLineAnnotation(x[i], from[i], x[i], to[i], stroke, colour));
      for (double end : new double[] {from[i], to[i]}) {
        plot.addAnnotation(
            new XYLineAnnotation(x[i] - reach, end, x[i] + reach, end, stroke, colour));
      }
    }
  }

  /** Boxes from one value to another behind the dots. */
  void boxes(String name, double[] x, double[] from, double[] to, Color colour, double reach) {
    square(name, colour);
    for (int i = 0; i < x.length; i++) {
      renderer.addAnnotation(
          new XYBoxAnnotation(
              x[i] - reach, from[i], x[i] + reach, to[i], new BasicStroke(0), colour, colour),
          Layer.BACKGROUND);
    }
  }

  /** A square in the key, for what is drawn beside the points. */
  private void square(String name, Color colour) {
    int index = data.getSeriesCount();
    add(name, new double[0], new double[0], colour, true, false);
    renderer.setSeriesShape(index, new Rectangle2D.Double(-6, -6, 12, 12));
  }

  /** The band of tolerance. */
  void band(double from, double to) {
    plot.addRangeMarker(new IntervalMarker(from, to, theme.tolerance()), Layer.BACKGROUND);
  }

  private void add(
      String name, double[] x, double[] y, Color colour, boolean dots, boolean joined) {
    XYSeries row = new XYSeries(name, false, true);
    for (int i = 0; i < x.length; i++) {
      row.add(x[i], y[i]);
    }
    int index = data.getSeriesCount();
    data.addSeries(row);
    renderer.setSeriesShapesVisible(index, dots);
    renderer.setSeriesLinesVisible(index, joined);
    renderer.setSeriesPaint(index, colour);
    renderer.setSeriesShape(index, new Ellipse2D.Double(-4, -4, 8, 8));
    renderer.setSeriesStroke(index, new BasicStroke(2));
  }

  /** Words beside a level, above its line at the right. */
  void level(double at, Color colour, boolean dashed, String words) {
    level(at, colour, dashed);
    labels.atLevel(words, at, theme.ink(), 1);
  }

  void level(double at, Color colour, boolean dashed) {
    BasicStroke stroke = dashed ? Frame.dashed(1.3f, 6, 5) : new BasicStroke(1.3f);
    plot.addRangeMarker(new ValueMarker(at, colour, stroke), Layer.BACKGROUND);
    plot.getRangeAxis()
        .setRange(
            Math.min(plot.getRangeAxis().getLowerBound(), at * 1.15),
            Math.max(plot.getRangeAxis().getUpperBound(), at * 1.15));
  }

  /** Values are written at whole steps. */
  void wholeSteps() {
    plot.getRangeAxis().setStandardTickUnits(NumberAxis.createIntegerTickUnits());
  }

  /** From where to where the values are shown. */
  void range(double from, double to) {
    plot.getRangeAxis().setRange(from, to);
  }

  JFreeChart chart(String title, String note) {
    return Frame.chart(title, plot, plot.getLegendItems(), note, theme);
  }
}
