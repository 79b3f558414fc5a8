package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** The mean of a firing row as a line through it, and the ends of its interval as dashed lines. */
final class MeanAnnotation extends AbstractXYAnnotation {
  private static final BasicStroke LINE = new BasicStroke(2.4f);
  private static final BasicStroke DASHED =
      new BasicStroke(
          1.3f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {6, 5}, 0);

  private final transient Mean mean;
  private final transient Color colour;

  MeanAnnotation(Mean mean, Color colour) {
    this.mean = mean;
    this.colour = colour;
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
    graphics.setPaint(colour);
    double y = range.valueToJava2D(mean.stops(), area, plot.getRangeAxisEdge());
    graphics.setStroke(LINE);
    graphics.draw(new Line2D.Double(area.getMinX(), y, area.getMaxX(), y));
    graphics.setStroke(DASHED);
    mean.interval()
        .ifPresent(
            span -> {
              for (double end : new double[] {span.lowStops(), span.highStops()}) {
                double at = range.valueToJava2D(end, area, plot.getRangeAxisEdge());
                graphics.draw(new Line2D.Double(area.getMinX(), at, area.getMaxX(), at));
              }
            });
  }
}
