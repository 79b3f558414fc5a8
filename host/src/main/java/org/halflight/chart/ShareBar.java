package org.halflight.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;

/** A lying bar: full where it was measured, a hatched and dashed box where it was only allowed. */
record ShareBar(int row, double share, boolean measured, Theme theme)
    implements PlotAnnotation.Drawing {
  private static final double HALF_HEIGHT = 0.3;
  private static final double LEAST_PIXELS = 1.5;

  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    Rectangle2D bar = axes.box(0, share, row - HALF_HEIGHT, row + HALF_HEIGHT);
    bar.setRect(bar.getX(), bar.getY(), Math.max(LEAST_PIXELS, bar.getWidth()), bar.getHeight());
    if (measured) {
      graphics.setPaint(theme.asLeft());
      graphics.fill(bar);
      return;
    }
    ToleranceBand.hatch(graphics, bar, theme);
    graphics.setPaint(theme.asFound());
    graphics.setStroke(Frame.dashed(1.6f, 5, 3));
    graphics.draw(bar);
  }
}
