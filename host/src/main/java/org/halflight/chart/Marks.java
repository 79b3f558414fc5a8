package org.halflight.chart;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import org.halflight.session.Outcome;
import org.halflight.session.Phase;

/** The shapes that tell marks apart without colour, around the origin, about one unit wide. */
final class Marks {
  static final Shape CIRCLE = new Ellipse2D.Double(-0.5, -0.5, 1, 1);
  static final Shape DIAMOND = closed(0, -0.62, 0.62, 0, 0, 0.62, -0.62, 0);
  static final Shape SQUARE = new Rectangle2D.Double(-0.46, -0.46, 0.92, 0.92);
  static final Shape ONWARD = closed(-0.5, -0.58, 0.6, 0, -0.5, 0.58);
  static final Shape UP = closed(0, -0.58, 0.6, 0.46, -0.6, 0.46);
  static final Shape DOWN = closed(0, 0.58, 0.6, -0.46, -0.6, -0.46);
  static final Shape CROSS = strokes(-0.42, -0.42, 0.42, 0.42, -0.42, 0.42, 0.42, -0.42);
  static final Shape PLUS = strokes(-0.5, 0, 0.5, 0, 0, -0.5, 0, 0.5);
  static final Shape CROSSED_OUT = crossedOut();
  static final Shape TWO_BARS = strokes(-0.2, -0.45, -0.2, 0.45, 0.2, -0.45, 0.2, 0.45);

  private Marks() {}

  /** The mark of a release without a time in a firing row. */
  static Shape of(Outcome outcome) {
    return switch (outcome) {
      case TIMED -> DIAMOND;
      case STUCK_OPEN -> UP;
      case DID_NOT_OPEN -> CROSS;
      case LIGHT_WHILE_COCKING -> SQUARE;
      case DOUBLE -> TWO_BARS;
      case NEVER_FULLY_OPEN -> DOWN;
      case OPENS_HOLDS_CLOSES, DID_NOT_HOLD, HELD_FOR_LIGHT, NOT_A_SHUTTER_EVENT, UNUSABLE -> PLUS;
    };
  }

  /** The mark of a timed firing. */
  static Shape of(Phase phase) {
    return switch (phase) {
      case AS_FOUND -> CIRCLE;
      case ADJUSTING -> ONWARD;
      case AS_LEFT -> DIAMOND;
    };
  }

  static Shape sized(Shape shape, double size) {
    return AffineTransform.getScaleInstance(size, size).createTransformedShape(shape);
  }

  private static Shape closed(double... points) {
    Path2D path = new Path2D.Double();
    path.moveTo(points[0], points[1]);
    for (int i = 2; i < points.length; i += 2) {
      path.lineTo(points[i], points[i + 1]);
    }
    path.closePath();
    return path;
  }

  private static Shape crossedOut() {
    Path2D path = new Path2D.Double(CIRCLE);
    path.append(strokes(-0.8, -0.8, 0.8, 0.8, -0.8, 0.8, 0.8, -0.8), false);
    return path;
  }

  private static Shape strokes(double... points) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < points.length; i += 4) {
      path.moveTo(points[i], points[i + 1]);
      path.lineTo(points[i + 2], points[i + 3]);
    }
    return path;
  }
}
