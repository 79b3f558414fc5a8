package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.data.xy.IntervalXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * A mean as a bar lying across its firings, and its interval as a line with feet. There is a row of
 * data for each phase; the bar is filled as its firings are.
 */
final class MeanBarRenderer extends AbstractXYItemRenderer {
  private static final double BAR_PIXELS = 5;
  private static final double FOOT_PIXELS = 5;

  private final transient Theme theme;

  MeanBarRenderer(Theme theme) {
    this.theme = theme;
  }

  @Override
  public void drawItem(
      Graphics2D graphics,
      XYItemRendererState state,
      Rectangle2D area,
      PlotRenderingInfo info,
      XYPlot plot,
      ValueAxis domain,
      ValueAxis range,
      XYDataset dataset,
      int row,
      int item,
      CrosshairState crosshair,
      int pass) {
    IntervalXYDataset means = (IntervalXYDataset) dataset;
    double x = domain.valueToJava2D(means.getXValue(row, item), area, plot.getDomainAxisEdge());
    double left =
        domain.valueToJava2D(means.getStartXValue(row, item), area, plot.getDomainAxisEdge());
    double right =
        domain.valueToJava2D(means.getEndXValue(row, item), area, plot.getDomainAxisEdge());
    double y = range.valueToJava2D(means.getYValue(row, item), area, plot.getRangeAxisEdge());
    double low = means.getStartYValue(row, item);
    double high = means.getEndYValue(row, item);
    Color colour = (Color) lookupSeriesPaint(row);

    graphics.setPaint(colour);
    graphics.setStroke(new BasicStroke(1.6f));
    // Not a number where the interval of the mean is not known.
    if (!Double.isNaN(low)) {
      double bottom = range.valueToJava2D(low, area, plot.getRangeAxisEdge());
      double top = range.valueToJava2D(high, area, plot.getRangeAxisEdge());
      graphics.draw(new Line2D.Double(x, bottom, x, top));
      for (double end : new double[] {bottom, top}) {
        graphics.draw(new Line2D.Double(x - FOOT_PIXELS, end, x + FOOT_PIXELS, end));
      }
    }
    Rectangle2D bar = new Rectangle2D.Double(left, y - BAR_PIXELS / 2, right - left, BAR_PIXELS);
    graphics.setPaint(theme.filling(SpeedMap.SERIES.get(row)));
    graphics.fill(bar);
    graphics.setPaint(colour);
    graphics.draw(bar);
  }
}
