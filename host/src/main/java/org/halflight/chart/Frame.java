package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import org.halflight.words.Words;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.Range;
import org.jspecify.annotations.Nullable;

/** What all pictures have in common: headline, legend, axis of stops, line of no error, note. */
final class Frame {
  private Frame() {}

  /** An empty plot with an axis of stops, and a strip above it. */
  static XYPlot plot(NumberAxis domain, StopsRange range, EdgeStrip strip, Theme theme) {
    return withStrip(stops(Words.say("chart.stops"), domain, range.range(), theme), strip);
  }

  /** An empty plot with an axis of stops, and a line of no error. */
  static XYPlot stops(String label, NumberAxis domain, Range range, Theme theme) {
    NumberAxis stops = new NumberAxis(label);
    stops.setRange(range);
    double step = step(range.getLength());
    stops.setTickUnit(new NumberTickUnit(step, signed(step == 0.25 ? "0.00" : "0.0")));
    XYPlot plot = bare(domain, stops, theme);
    // The first data set is drawn last, so that firings lie on top of means.
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
    plot.addRangeMarker(
        new ValueMarker(0, theme.quietInk(), new BasicStroke(1.3f)), Layer.BACKGROUND);
    return plot;
  }

  /** The same plot with a strip above it. */
  static XYPlot withStrip(XYPlot plot, EdgeStrip strip) {
    plot.setDomainAxis(1, strip);
    plot.setDomainAxisLocation(1, AxisLocation.TOP_OR_LEFT);
    plot.setAxisOffset(new RectangleInsets(0, 2, 4, 2));
    return plot;
  }

  /** Points, each with its x and y, as a data set wants them. */
  static double[][] columns(List<double[]> points) {
    return new double[][] {
      points.stream().mapToDouble(point -> point[0]).toArray(),
      points.stream().mapToDouble(point -> point[1]).toArray()
    };
  }

  /** An empty plot with lines across at the ticks of its values. */
  static XYPlot bare(ValueAxis domain, ValueAxis range, Theme theme) {
    dress(domain, theme);
    dress(range, theme);
    XYPlot plot = new XYPlot(null, domain, range, null);
    plot.setBackgroundPaint(theme.background());
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinePaint(theme.grid());
    plot.setRangeGridlineStroke(new BasicStroke(1));
    return plot;
  }

  /** A broken line. */
  static BasicStroke dashed(float width, float on, float off) {
    float[] dashes = {on, off};
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, dashes, 0);
  }

  /** An axis of names at 0, 1, 2 and so on, with room for half a name at both ends. */
  static SymbolAxis names(@Nullable String label, List<String> names) {
    return names(label, names, names);
  }

  /** The same with shorter names for where those have no room. */
  static SymbolAxis names(@Nullable String label, List<String> names, List<String> shorter) {
    SymbolAxis axis = new NameAxis(label, names, shorter);
    axis.setGridBandsVisible(false);
    axis.setRange(-0.5, names.size() - 0.5);
    return axis;
  }

  /** An axis that counts from 1. */
  static NumberAxis counted(String label, int to) {
    NumberAxis axis = new NumberAxis(label);
    axis.setStandardTickUnits(NumberAxis.createIntegerTickUnits());
    axis.setRange(0.5, to + 0.5);
    return axis;
  }

  /** Numbers as they are, without zeros that say nothing. */
  static NumberFormat plain() {
    return new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(Locale.ROOT));
  }

  /** Words beside the line of a marker, without the grey box that the library puts behind them. */
  static void label(ValueMarker marker, String words, Color ink, Theme theme) {
    marker.setLabel(words);
    marker.setLabelFont(theme.smallLetters());
    marker.setLabelPaint(ink);
    marker.setLabelBackgroundColor(Theme.NONE);
  }

  /** A chart around a plot. */
  static JFreeChart chart(
      String title, XYPlot plot, LegendItemCollection legend, String note, Theme theme) {
    plot.setFixedLegendItems(legend);
    JFreeChart chart = new JFreeChart(null, theme.headline(), plot, false);
    chart.setBackgroundPaint(theme.background());
    chart.setPadding(new RectangleInsets(16, 18, 12, 22));
    chart.setAntiAlias(true);

    TextTitle headline = new TextTitle(title, theme.headline());
    headline.setPaint(theme.ink());
    headline.setHorizontalAlignment(HorizontalAlignment.LEFT);
    headline.setTextAlignment(HorizontalAlignment.LEFT);
    headline.setPadding(new RectangleInsets(0, 4, 6, 0));
    chart.setTitle(headline);

    LegendTitle key = new LegendTitle(plot);
    key.setPosition(RectangleEdge.TOP);
    key.setHorizontalAlignment(HorizontalAlignment.LEFT);
    key.setItemFont(theme.smallLetters());
    key.setItemPaint(theme.ink());
    key.setBackgroundPaint(theme.background());
    key.setFrame(BlockBorder.NONE);
    key.setLegendItemGraphicPadding(new RectangleInsets(2, 2, 2, 2));
    key.setItemLabelPadding(new RectangleInsets(2, 4, 2, 18));
    key.setPadding(new RectangleInsets(0, 2, 10, 0));
    chart.addSubtitle(key);

    if (!note.isEmpty()) {
      TextTitle foot = new TextTitle(note, theme.smallLetters());
      foot.setPaint(theme.quietInk());
      foot.setPosition(RectangleEdge.BOTTOM);
      foot.setHorizontalAlignment(HorizontalAlignment.LEFT);
      foot.setTextAlignment(HorizontalAlignment.LEFT);
      foot.setPadding(new RectangleInsets(10, 4, 0, 0));
      chart.addSubtitle(foot);
    }
    return chart;
  }

  static void dress(Axis axis, Theme theme) {
    Color quiet = theme.quietInk();
    axis.setLabelFont(theme.letters());
    axis.setLabelPaint(quiet);
    axis.setTickLabelFont(theme.letters());
    axis.setTickLabelPaint(theme.ink());
    axis.setTickLabelInsets(new RectangleInsets(4, 4, 4, 6));
    axis.setLabelInsets(new RectangleInsets(6, 2, 2, 8));
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
  }

  /** Few lines, whatever the size of the picture: the reader looks at marks, not at lines. */
  private static double step(double spanStops) {
    if (spanStops <= 1.7) {
      return 0.25;
    }
    return spanStops <= 4.5 ? 0.5 : spanStops <= 9 ? 1 : 2;
  }

  /** Plus and minus, but a bare zero. */
  static NumberFormat signed(String pattern) {
    DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
    DecimalFormat plain = new DecimalFormat(pattern, symbols);
    return format(
        number -> {
          String digits = plain.format(Math.abs(number));
          String sign = digits.equals(plain.format(0)) ? "" : number > 0 ? "+" : "\u2212";
          return sign + digits;
        });
  }

  /** Ticks that are written in a way of their own. */
  static NumberFormat format(DoubleFunction<String> words) {
    return new NumberFormat() {
      @Override
      public StringBuffer format(double number, StringBuffer text, FieldPosition position) {
        return text.append(words.apply(number));
      }

      @Override
      public StringBuffer format(long number, StringBuffer text, FieldPosition position) {
        return format((double) number, text, position);
      }

      @Override
      public Number parse(String text, ParsePosition position) {
        throw new UnsupportedOperationException("ticks are only written");
      }
    };
  }
}
