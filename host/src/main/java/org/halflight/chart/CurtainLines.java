package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.plot.XYPlot;

/**
 * Lines and bands over a frame: solid between the outer sensors, dashed beyond, where a curve goes
 * on that nobody has seen.
 *
 * @param halfFrame half the frame in mm
 * @param outer from its middle to the outer sensors in mm
 */
record CurtainLines(XYPlot plot, double halfFrame, double outer) {
  private static final int STEPS = 24;
  private static final float WIDTH = 2.4f;

  /** A line by its height over each place. */
  void line(DoubleUnaryOperator height, Color colour) {
    stroke(height, -outer, outer, colour, new BasicStroke(WIDTH));
    stroke(height, -halfFrame, -outer, colour, Frame.dashed(WIDTH, 4, 3));
    stroke(height, outer, halfFrame, colour, Frame.dashed(WIDTH, 4, 3));
  }

  private void stroke(
      DoubleUnaryOperator height, double from, double to, Color colour, BasicStroke stroke) {
    plot.addAnnotation(
        new PlotAnnotation(
            (graphics, axes) -> {
              graphics.setPaint(colour);
              graphics.setStroke(stroke);
              graphics.draw(path(axes, height, from, to));
            }));
  }

  /** What is between two lines, over the part that sensors see. */
  void band(DoubleUnaryOperator below, DoubleUnaryOperator above, Color colour) {
    plot.addAnnotation(
        new PlotAnnotation(
            (graphics, axes) -> {
              Path2D area = path(axes, below, -outer, outer);
              area.append(path(axes, above, outer, -outer), true);
              area.closePath();
              graphics.setPaint(colour);
              graphics.fill(area);
            }));
  }

  private static Path2D path(
      PlotAnnotation.Axes axes, DoubleUnaryOperator height, double from, double to) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i <= STEPS; i++) {
      double place = from + (to - from) * i / STEPS;
      Point2D at = axes.at(place, height.applyAsDouble(place));
      if (i == 0) {
        path.moveTo(at.getX(), at.getY());
      } else {
        path.lineTo(at.getX(), at.getY());
      }
    }
    return path;
  }
}
