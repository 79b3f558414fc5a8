package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** The band of tolerance of a stretch of the x axis, and its unsure zones as drawn hatching. */
final class ToleranceAnnotation extends AbstractXYAnnotation {
  private static final double HATCH_PIXELS = 7;
  private static final int HATCH_ALPHA = 0x90;

  private final double from;
  private final double to;
  private final transient Tolerance tolerance;
  private final transient Theme theme;

  ToleranceAnnotation(double from, double to, Tolerance tolerance, Theme theme) {
    this.from = from;
    this.to = to;
    this.tolerance = tolerance;
    this.theme = theme;
  }

  Tolerance tolerance() {
    return tolerance;
  }

  double from() {
    return from;
  }

  double to() {
    return to;
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
    Span span = tolerance.span();
    Rectangle2D band = box(plot, area, domain, range, span.lowStops(), span.highStops());
    graphics.setPaint(theme.tolerance());
    graphics.fill(band);
    tolerance
        .unsure()
        .ifPresent(
            unsure -> {
              for (double limit : new double[] {span.lowStops(), span.highStops()}) {
                hatch(
                    graphics,
                    box(
                        plot,
                        area,
                        domain,
                        range,
                        limit + unsure.lowStops(),
                        limit + unsure.highStops()),
                    theme);
              }
            });
  }

  private Rectangle2D box(
      XYPlot plot,
      Rectangle2D area,
      ValueAxis domain,
      ValueAxis range,
      double lowStops,
      double highStops) {
    double left = domain.valueToJava2D(from, area, plot.getDomainAxisEdge());
    double right = domain.valueToJava2D(to, area, plot.getDomainAxisEdge());
    double top = range.valueToJava2D(highStops, area, plot.getRangeAxisEdge());
    double bottom = range.valueToJava2D(lowStops, area, plot.getRangeAxisEdge());
    Rectangle2D box = new Rectangle2D.Double(left, top, right - left, bottom - top);
    return box.createIntersection(area);
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
    graphics.setPaint(
        new Color(
            theme.quietInk().getRed(),
            theme.quietInk().getGreen(),
            theme.quietInk().getBlue(),
            HATCH_ALPHA));
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
