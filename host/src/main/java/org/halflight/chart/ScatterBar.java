package org.halflight.chart;

import java.awt.Color;
import java.awt.Graphics2D;

/**
 * The scatter of single firings: a pale bar from one standard deviation below the mean to above.
 */
final class ScatterBar extends PlotAnnotation {
  private final double from;
  private final double to;
  private final double lowStops;
  private final double highStops;
  private final transient Color colour;

  ScatterBar(double from, double to, double lowStops, double highStops, Color colour) {
    this.from = from;
    this.to = to;
    this.lowStops = lowStops;
    this.highStops = highStops;
    this.colour = colour;
  }

  double lowStops() {
    return lowStops;
  }

  double highStops() {
    return highStops;
  }

  @Override
  void draw(Graphics2D graphics, Axes axes) {
    graphics.setPaint(Theme.pale(colour));
    graphics.fill(axes.box(from, to, lowStops, highStops));
  }
}
