package org.halflight.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.Arrays;
import java.util.List;
import org.halflight.exposure.Direction;
import org.halflight.exposure.Place;
import org.halflight.words.Words;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.ValueTick;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * The frame that curtains run over, as one sees it from behind: outer sensor A is at the left, or
 * at the top where they run along the height.
 *
 * @param millimetres length in the direction of travel
 * @param isUpright whether they run along the height, down or up
 * @param direction which sensor they pass first
 */
public record CurtainFrame(double millimetres, boolean isUpright, Direction direction) {
  private static final double HEAD = 0.7;

  /** What is shown, in frames. */
  private static final double AROUND = 1.14;

  public CurtainFrame {
    if (!(millimetres > 0)) {
      throw new IllegalArgumentException("a frame has a length: " + millimetres);
    }
  }

  double half() {
    return millimetres / 2;
  }

  /** Such as {@code seen from behind, travel left to right}. */
  String words() {
    return Words.say(
        "chart.curtain.behind."
            + (isUpright ? "upright" : "lying")
            + (direction == Direction.A_TO_B ? "" : ".back"));
  }

  /** The same without the view, for pictures whose travel always goes to the right. */
  String size() {
    return Words.say("chart.curtain.frame", Frame.plain().format(millimetres));
  }

  /** The places by name, on a scale in mm from the middle of the frame. */
  NumberAxis axis(List<CurtainTrack> tracks) {
    double outer =
        tracks.stream().mapToDouble(CurtainTrack::outerMillimetres).findFirst().orElse(0.45);
    NumberAxis axis = new PlaceAxis(size(), outer);
    axis.setRange(-half(), half());
    axis.setInverted(goesLeft());
    return axis;
  }

  /** Whether they run to the left, as seen from behind. */
  boolean goesLeft() {
    return !isUpright && direction == Direction.B_TO_A;
  }

  /** Turns a plot as the frame is seen from behind, with some room around it. */
  void turn(XYPlot plot) {
    if (isUpright) {
      plot.setOrientation(PlotOrientation.HORIZONTAL);
      plot.getDomainAxis().setInverted(direction == Direction.A_TO_B);
    }
    plot.getDomainAxis().setRange(-AROUND * half(), AROUND * half());
  }

  /** Lines at the sensors, and a shade where none sees. */
  void places(XYPlot plot, List<CurtainTrack> tracks, Theme theme) {
    double outer =
        tracks.stream().mapToDouble(CurtainTrack::outerMillimetres).findFirst().orElse(half());
    for (double at : new double[] {-outer, 0, outer}) {
      plot.addDomainMarker(
          new ValueMarker(at, theme.grid(), new BasicStroke(1.3f)), Layer.BACKGROUND);
    }
    plot.addDomainMarker(new IntervalMarker(-half(), -outer, theme.grid()), Layer.BACKGROUND);
    plot.addDomainMarker(new IntervalMarker(outer, half(), theme.grid()), Layer.BACKGROUND);
  }

  /** How much of the frame no sensor sees at either edge, in words. */
  String notSeen(List<CurtainTrack> tracks) {
    double outer =
        tracks.stream().mapToDouble(CurtainTrack::outerMillimetres).findFirst().orElse(half());
    return Words.say(
        "chart.curtain.notSeen", Math.round(100 * Math.max(0, 0.5 - outer / millimetres)));
  }

  /** An arrow along the travel at a height of the other axis. */
  PlotAnnotation arrow(double at, Color ink, Theme theme) {
    return new PlotAnnotation((graphics, axes) -> arrow(graphics, axes, at, ink, theme));
  }

  private void arrow(
      Graphics2D graphics, PlotAnnotation.Axes axes, double at, Color ink, Theme theme) {
    Point2D from = axes.at(-0.9 * half(), at);
    Point2D to = axes.at(0.9 * half(), at);
    double length = from.distance(to);
    double alongX = (to.getX() - from.getX()) / length;
    double alongY = (to.getY() - from.getY()) / length;
    double head = HEAD * theme.letterSize();
    Path2D arrow = new Path2D.Double();
    arrow.moveTo(from.getX(), from.getY());
    arrow.lineTo(to.getX(), to.getY());
    for (int side : new int[] {-1, 1}) {
      arrow.moveTo(to.getX(), to.getY());
      arrow.lineTo(
          to.getX() - head * alongX - side * head / 2 * alongY,
          to.getY() - head * alongY + side * head / 2 * alongX);
    }
    graphics.setPaint(ink);
    graphics.setStroke(new BasicStroke(2.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    graphics.draw(arrow);
  }

  /** A scale in mm on which only the places of the sensors are named. */
  private static final class PlaceAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;
    private final double outer;

    PlaceAxis(String label, double outer) {
      super(label);
      this.outer = outer;
    }

    @Override
    public List<ValueTick> refreshTicks(
        Graphics2D graphics,
        org.jfree.chart.axis.AxisState state,
        java.awt.geom.Rectangle2D area,
        RectangleEdge edge) {
      TextAnchor anchor =
          RectangleEdge.isTopOrBottom(edge) ? TextAnchor.TOP_CENTER : TextAnchor.CENTER_RIGHT;
      return Arrays.stream(Place.values())
          .<ValueTick>map(
              place ->
                  new NumberTick(
                      (place.index() - 1) * outer,
                      Words.of("chart.curtain.place", place),
                      anchor,
                      TextAnchor.CENTER,
                      0))
          .toList();
    }
  }
}
