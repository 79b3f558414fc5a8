package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.data.Range;
import org.jspecify.annotations.Nullable;

/**
 * A strip above the plot for what has no place on the axis of stops: marks and short lines of text
 * over places of the x axis. It is an axis, so that the plot makes room for it and no firing can
 * hide behind it. A text that is wider than its place is written shorter; where that is too wide,
 * the mark is there alone, and the key explains it.
 */
final class EdgeStrip extends NumberAxis {
  private static final double AIR_PIXELS = 6;
  private static final double GAP_PIXELS = 8;
  private static final double MARK_GAP_PIXELS = 5;

  /** What the axis at the left takes at most, in letters. */
  private static final double SIDE_LETTERS = 7;

  /**
   * A line of the strip: a mark, a text or both.
   *
   * @param mark around the origin and about one unit wide, or null
   * @param filled whether the mark is filled
   * @param colour of the mark
   * @param text beside the mark, or empty
   * @param shorter the same in fewer letters; empty where there is nothing shorter
   */
  record Line(
      @Nullable Shape mark, boolean filled, @Nullable Color colour, String text, String shorter) {
    static Line of(Shape mark, boolean filled, Color colour) {
      return new Line(mark, filled, colour, "", "");
    }

    static Line of(String text) {
      return new Line(null, false, null, text, "");
    }

    private Line with(String another) {
      return new Line(mark, filled, colour, another, "");
    }
  }

  private final transient Map<Double, List<Line>> lines = new TreeMap<>();
  private final transient Map<Double, List<Line>> arranged = new TreeMap<>();
  private final transient Theme theme;

  EdgeStrip(Range domain, Theme theme) {
    super(null);
    this.theme = theme;
    setRange(domain);
    setAxisLineVisible(false);
    setTickLabelsVisible(false);
    setTickMarksVisible(false);
  }

  /** Adds a line below those that are already over a place. */
  void add(double x, Line line) {
    lines.computeIfAbsent(x, place -> new ArrayList<>()).add(line);
  }

  Map<Double, List<Line>> lines() {
    return lines;
  }

  /**
   * Writes each line as its place has room for it. Where there are too many, words go before marks.
   *
   * @param width of the whole picture
   * @param most how high the strip may be; one line is always there
   * @return how high it is
   */
  double arrange(Graphics2D graphics, double width, double most) {
    int mostLines = Math.max(1, (int) ((most - AIR_PIXELS) / lineHeight()));
    double room = (width - SIDE_LETTERS * theme.letterSize()) / getRange().getLength() - GAP_PIXELS;
    arranged.clear();
    lines.forEach(
        (place, its) -> {
          List<Line> fitted = new ArrayList<>();
          its.forEach(line -> fitted.addAll(fitted(graphics, line, room)));
          if (fitted.size() > mostLines) {
            fitted.removeIf(line -> line.mark() == null);
          }
          arranged.put(place, fitted.subList(0, Math.min(mostLines, fitted.size())));
        });
    return height();
  }

  private List<Line> fitted(Graphics2D graphics, Line line, double room) {
    for (String text : List.of(line.text(), line.shorter())) {
      if (!text.isEmpty() && width(graphics, line.with(text)) <= room) {
        return List.of(line.with(text));
      }
    }
    return line.mark() == null ? List.of() : List.of(line.with(""));
  }

  @Override
  public AxisSpace reserveSpace(
      Graphics2D graphics, Plot plot, Rectangle2D area, RectangleEdge edge, AxisSpace space) {
    AxisSpace all = space == null ? new AxisSpace() : space;
    if (arranged.isEmpty()) {
      arrange(graphics, area.getWidth(), area.getHeight());
    }
    all.add(height(), edge);
    return all;
  }

  @Override
  public AxisState draw(
      Graphics2D graphics,
      double cursor,
      Rectangle2D area,
      Rectangle2D dataArea,
      RectangleEdge edge,
      PlotRenderingInfo info) {
    arranged.forEach(
        (place, its) -> {
          double x = valueToJava2D(place, dataArea, edge);
          double y = cursor - AIR_PIXELS - (its.size() - 1) * lineHeight();
          for (Line line : its) {
            drawLine(graphics, line, x, y);
            y += lineHeight();
          }
        });
    AxisState state = new AxisState(cursor);
    state.cursorUp(height());
    return state;
  }

  private void drawLine(Graphics2D graphics, Line line, double x, double baseline) {
    double left = x - width(graphics, line) / 2;
    if (line.mark() != null) {
      double markSize = Keys.markSize(theme);
      Shape mark =
          AffineTransform.getTranslateInstance(
                  left + markSize / 2, baseline - 0.36 * theme.letterSize())
              .createTransformedShape(Marks.sized(line.mark(), markSize));
      graphics.setStroke(new BasicStroke(1.7f));
      graphics.setPaint(line.filled() ? line.colour() : theme.background());
      graphics.fill(mark);
      graphics.setPaint(line.colour());
      graphics.draw(mark);
      left += markSize + MARK_GAP_PIXELS;
    }
    graphics.setFont(theme.smallLetters());
    graphics.setPaint(theme.ink());
    graphics.drawString(line.text(), (float) left, (float) baseline);
  }

  private double width(Graphics2D graphics, Line line) {
    Font font = theme.smallLetters();
    double mark = line.mark() == null ? 0 : Keys.markSize(theme);
    double gap = line.mark() == null || line.text().isEmpty() ? 0 : MARK_GAP_PIXELS;
    return mark
        + gap
        + graphics.getFontMetrics(font).getStringBounds(line.text(), graphics).getWidth();
  }

  private double lineHeight() {
    return 1.25 * theme.letterSize();
  }

  private double height() {
    int most = arranged.values().stream().mapToInt(List::size).max().orElse(0);
    return most == 0 ? 0 : most * lineHeight() + AIR_PIXELS;
  }
}
