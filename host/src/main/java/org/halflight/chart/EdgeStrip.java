package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
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
 * hide behind it.
 */
final class EdgeStrip extends NumberAxis {
  private static final double AIR_PIXELS = 6;
  private static final double GAP_PIXELS = 10;

  /**
   * A line of the strip: a mark, a text or both.
   *
   * @param mark around the origin and about one unit wide, or null
   * @param filled whether the mark is filled
   * @param colour of the mark
   * @param text beside the mark, or empty
   * @param needed whether the text must be there however little room there is; false where the
   *     legend explains the mark
   */
  record Line(
      @Nullable Shape mark, boolean filled, @Nullable Color colour, String text, boolean needed) {
    static Line of(String text) {
      return new Line(null, false, null, text, true);
    }

    static Line ifThereIsRoom(String text) {
      return new Line(null, false, null, text, false);
    }
  }

  private final transient Map<Double, List<Line>> lines = new TreeMap<>();
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

  @Override
  public AxisSpace reserveSpace(
      Graphics2D graphics, Plot plot, Rectangle2D area, RectangleEdge edge, AxisSpace space) {
    AxisSpace all = space == null ? new AxisSpace() : space;
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
    double places = getRange().getLength();
    double room = dataArea.getWidth() / places - GAP_PIXELS;
    for (Map.Entry<Double, List<Line>> entry : lines.entrySet()) {
      double x = valueToJava2D(entry.getKey(), dataArea, edge);
      double y = cursor - AIR_PIXELS - (entry.getValue().size() - 1) * lineHeight();
      for (Line line : entry.getValue()) {
        drawLine(graphics, line, x, y, room);
        y += lineHeight();
      }
    }
    AxisState state = new AxisState(cursor);
    state.cursorUp(height());
    return state;
  }

  private void drawLine(Graphics2D graphics, Line line, double x, double baseline, double room) {
    Font font = theme.smallLetters();
    double markSize = line.mark() == null ? 0 : Keys.markSize(theme);
    double gap = line.mark() == null || line.text().isEmpty() ? 0 : 5;
    double textWidth = width(graphics, font, line.text());
    double width = markSize + gap + textWidth;
    if (width > room && textWidth > 0) {
      // Narrow columns get narrower letters rather than text that runs into the neighbour's.
      if (!line.needed()) {
        return;
      }
      double squeeze = Math.max(0.6, (room - markSize - gap) / textWidth);
      font = font.deriveFont(AffineTransform.getScaleInstance(squeeze, 0.5 + squeeze / 2));
      width = markSize + gap + width(graphics, font, line.text());
    }
    double left = x - width / 2;
    if (line.mark() != null) {
      Shape mark =
          AffineTransform.getTranslateInstance(
                  left + markSize / 2, baseline - 0.36 * theme.letterSize())
              .createTransformedShape(Marks.sized(line.mark(), markSize));
      graphics.setStroke(new BasicStroke(1.7f));
      graphics.setPaint(line.filled() ? line.colour() : theme.background());
      graphics.fill(mark);
      graphics.setPaint(line.colour());
      graphics.draw(mark);
    }
    graphics.setFont(font);
    graphics.setPaint(theme.ink());
    graphics.drawString(line.text(), (float) (left + markSize + gap), (float) baseline);
  }

  private static double width(Graphics2D graphics, Font font, String text) {
    FontMetrics metrics = graphics.getFontMetrics(font);
    return metrics.getStringBounds(text, graphics).getWidth();
  }

  private double lineHeight() {
    return 1.25 * theme.letterSize();
  }

  private double height() {
    int most = lines.values().stream().mapToInt(List::size).max().orElse(0);
    return most == 0 ? 0 : most * lineHeight() + AIR_PIXELS;
  }
}
