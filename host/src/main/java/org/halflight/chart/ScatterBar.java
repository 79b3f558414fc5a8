package org.halflight.chart;

import java.awt.Color;
import java.awt.Graphics2D;

/**
 * The scatter of single firings: a pale bar from one standard deviation below the mean to above.
 */
record ScatterBar(double from, double to, double lowStops, double highStops, Color colour)
    implements PlotAnnotation.Drawing {
  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    graphics.setPaint(Theme.pale(colour));
    graphics.fill(axes.box(from, to, lowStops, highStops));
  }
}
