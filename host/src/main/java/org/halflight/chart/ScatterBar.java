package org.halflight.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/**
 * The scatter of single firings: a pale bar from one standard deviation below the mean to above.
 */
final class ScatterBar extends AbstractXYAnnotation {
  private static final int ALPHA = 0x38;

  private final double from;
  private final double to;
  private final transient Span span;
  private final transient Color colour;

  ScatterBar(double from, double to, Span span, Color colour) {
    this.from = from;
    this.to = to;
    this.span = span;
    this.colour = colour;
  }

  Span span() {
    return span;
  }

  @Override
  public void draw(
      Graphics2D graphics,
      XYPlot plot,
      Rectangle2D area,
      ValueAxis domain,
      ValueAxis range,
      int rendererIndex,
      PlotRenderingInfo info) {
    double left = domain.valueToJava2D(from, area, plot.getDomainAxisEdge());
    double right = domain.valueToJava2D(to, area, plot.getDomainAxisEdge());
    double top = range.valueToJava2D(span.highStops(), area, plot.getRangeAxisEdge());
    double bottom = range.valueToJava2D(span.lowStops(), area, plot.getRangeAxisEdge());
    graphics.setPaint(pale(colour));
    graphics.fill(
        new Rectangle2D.Double(left, top, right - left, bottom - top).createIntersection(area));
  }

  static Color pale(Color colour) {
    return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), ALPHA);
  }
}
