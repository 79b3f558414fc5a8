package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.util.Optional;
import org.halflight.stats.Interval;

/** The mean of a firing row as a line through it, and the ends of its interval as dashed lines. */
record MeanLine(double meanStops, Optional<Interval> interval, Color colour)
    implements PlotAnnotation.Drawing {
  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    graphics.setPaint(colour);
    graphics.setStroke(new BasicStroke(2.4f));
    graphics.draw(across(meanStops, axes));
    graphics.setStroke(Frame.dashed(1.3f, 6, 5));
    interval.ifPresent(
        its -> {
          graphics.draw(across(its.low(), axes));
          graphics.draw(across(its.high(), axes));
        });
  }

  private static Line2D across(double stops, PlotAnnotation.Axes axes) {
    double y = axes.y(stops);
    return new Line2D.Double(axes.area().getMinX(), y, axes.area().getMaxX(), y);
  }
}
