package org.halflight.chart;

import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;

/** A drawing at places of the axes of a plot. */
final class PlotAnnotation extends AbstractXYAnnotation {
  /** What is drawn. */
  interface Drawing {
    void draw(Graphics2D graphics, Axes axes);
  }

  /** The plot as it is drawn: where values lie, in pixels. */
  record Axes(XYPlot plot, Rectangle2D area, ValueAxis domain, ValueAxis range) {
    double x(double value) {
      return domain.valueToJava2D(value, area, plot.getDomainAxisEdge());
    }

    double y(double value) {
      return range.valueToJava2D(value, area, plot.getRangeAxisEdge());
    }

    /** How far down a value of the axis at the side is, whichever axis that is. */
    double side(double value) {
      return plot.getOrientation().equals(PlotOrientation.HORIZONTAL) ? x(value) : y(value);
    }

    /** A place of both axes, whichever of them lies. */
    Point2D at(double inDomain, double inRange) {
      return plot.getOrientation().equals(PlotOrientation.HORIZONTAL)
          ? new Point2D.Double(y(inRange), x(inDomain))
          : new Point2D.Double(x(inDomain), y(inRange));
    }

    /** What of a box lies within the plot. */
    Rectangle2D box(double fromX, double toX, double fromY, double toY) {
      Rectangle2D box = new Rectangle2D.Double();
      box.setFrameFromDiagonal(at(fromX, fromY), at(toX, toY));
      return box.createIntersection(area);
    }
  }

  private final transient Drawing drawing;

  PlotAnnotation(Drawing drawing) {
    this.drawing = drawing;
  }

  Drawing drawing() {
    return drawing;
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
    drawing.draw(graphics, new Axes(plot, area, domain, range));
  }
}
