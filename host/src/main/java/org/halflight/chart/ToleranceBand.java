package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** The band of tolerance of a stretch of the x axis, and its unsure zones as drawn hatching. */
record ToleranceBand(double from, double to, Limits limits, Theme theme)
    implements PlotAnnotation.Drawing {
  private static final double HATCH_PIXELS = 7;

  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    graphics.setPaint(theme.tolerance());
    graphics.fill(axes.box(from, to, limits.lowStops(), limits.highStops()));
    if (limits.isUnsure()) {
      for (double limit : new double[] {limits.lowStops(), limits.highStops()}) {
        hatch(
            graphics,
            axes.box(
                from, to, limit - limits.unsureBelowStops(), limit + limits.unsureAboveStops()),
            theme);
      }
    }
  }

  /**
   * Slanted lines within a box; as lines and not as a texture, so that they stay sharp in print.
   */
  static void hatch(Graphics2D graphics, Rectangle2D box, Theme theme) {
    if (box.isEmpty()) {
      return;
    }
    Shape clip = graphics.getClip();
    graphics.clip(box);
    graphics.setPaint(theme.hatching());
    graphics.setStroke(new BasicStroke(0.8f));
    // All lines lie on one lattice of the picture, so that neighbouring boxes go on in each other.
    double sum = box.getMinX() + box.getMinY();
    double first = Math.floor(sum / HATCH_PIXELS) * HATCH_PIXELS;
    for (double c = first; c <= box.getMaxX() + box.getMaxY(); c += HATCH_PIXELS) {
      graphics.draw(
          new Line2D.Double(c - box.getMaxY(), box.getMaxY(), c - box.getMinY(), box.getMinY()));
    }
    graphics.setClip(clip);
  }
}
