package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;

/** An arrow from the mean as found to the mean as left. */
record ShiftArrow(double x, double fromStops, double toStops, Theme theme)
    implements PlotAnnotation.Drawing {
  private static final double HEAD_PIXELS = 8;
  private static final double HALF_HEAD_PIXELS = 4;

  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    double at = axes.x(x);
    double from = axes.y(fromStops);
    double to = axes.y(toStops);
    double way = Math.signum(to - from);
    double head = Math.min(HEAD_PIXELS, Math.abs(to - from));
    graphics.setPaint(theme.ink());
    graphics.setStroke(new BasicStroke(1.4f));
    graphics.draw(new Line2D.Double(at, from, at, to - way * head));
    Path2D tip = new Path2D.Double();
    tip.moveTo(at, to);
    tip.lineTo(at - HALF_HEAD_PIXELS, to - way * head);
    tip.lineTo(at + HALF_HEAD_PIXELS, to - way * head);
    tip.closePath();
    graphics.fill(tip);
  }
}
