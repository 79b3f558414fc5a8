package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** A lying bar: full where it was measured, a hatched and dashed box where it was only allowed. */
final class ShareBar extends AbstractXYAnnotation {
  private static final double HALF_HEIGHT = 0.3;

  private final int row;
  private final double share;
  private final boolean measured;
  private final transient Theme theme;

  ShareBar(int row, double share, boolean measured, Theme theme) {
    this.row = row;
    this.share = share;
    this.measured = measured;
    this.theme = theme;
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
    double left = domain.valueToJava2D(0, area, plot.getDomainAxisEdge());
    double right = domain.valueToJava2D(share, area, plot.getDomainAxisEdge());
    double one = range.valueToJava2D(row - HALF_HEIGHT, area, plot.getRangeAxisEdge());
    double other = range.valueToJava2D(row + HALF_HEIGHT, area, plot.getRangeAxisEdge());
    Rectangle2D bar =
        new Rectangle2D.Double(
            left, Math.min(one, other), Math.max(1.5, right - left), Math.abs(other - one));
    if (measured) {
      graphics.setPaint(theme.asLeft());
      graphics.fill(bar);
      return;
    }
    ToleranceAnnotation.hatch(graphics, bar, theme);
    graphics.setPaint(theme.asFound());
    graphics.setStroke(
        new BasicStroke(
            1.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {5, 3}, 0));
    graphics.draw(bar);
  }
}
