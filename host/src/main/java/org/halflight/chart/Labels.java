package org.halflight.chart;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * Words within a plot, each beside a place of its axes. They are set in their order, each where it
 * lies on no other word, on no mark and within the plot. What finds no such place is left out: the
 * table twin has it.
 */
final class Labels implements PlotAnnotation.Drawing {
  private static final double GAP_PIXELS = 3;

  /** Where words may stand, the best first: to the right or left (1, -1) and down or up. */
  private enum Sides {
    BESIDE(new int[][] {{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}}),
    RIGHT(new int[][] {{1, 0}, {1, -1}, {1, 1}}),
    ABOVE(new int[][] {{0, -1}, {1, -1}, {-1, -1}, {0, 1}}),
    BELOW(new int[][] {{0, 1}});

    private final int[][] inOrder;

    Sides(int[][] inOrder) {
      this.inOrder = inOrder;
    }
  }

  private record Label(String text, double x, double y, Sides sides, Color ink) {}

  private record AtLine(String text, double x, Color ink) {}

  private record Level(String text, double y, Color ink, double along) {}

  private record Lane(String text, int lane) {}

  private final Theme theme;
  private final double reach;
  private final List<double[]> marks = new ArrayList<>();
  private final List<Label> labels = new ArrayList<>();
  private final List<AtLine> lines = new ArrayList<>();
  private final List<Level> levels = new ArrayList<>();
  private final List<Lane> lanes = new ArrayList<>();

  Labels(Theme theme) {
    this(theme, Keys.markSize(theme));
  }

  /**
   * @param markSize of what words stand beside, in pixels
   */
  Labels(Theme theme, double markSize) {
    this.theme = theme;
    reach = markSize / 2;
  }

  /** No word lies on a mark at this place. */
  void keepOff(double x, double y) {
    marks.add(new double[] {x, y});
  }

  /** Words beside a mark. */
  void beside(String text, double x, double y) {
    labels.add(new Label(text, x, y, Sides.BESIDE, theme.ink()));
  }

  /** Words right of a mark. */
  void right(String text, double x, double y) {
    labels.add(new Label(text, x, y, Sides.RIGHT, theme.ink()));
  }

  void above(String text, double x, double y, Color ink) {
    labels.add(new Label(text, x, y, Sides.ABOVE, ink));
  }

  void below(String text, double x, double y) {
    labels.add(new Label(text, x, y, Sides.BELOW, theme.ink()));
  }

  /** Words at the foot of a standing line. */
  void atLine(String text, double x) {
    lines.add(new AtLine(text, x, theme.ink()));
  }

  /** Words on or under a lying line; {@code along} is 0 at its left end and 1 at its right. */
  void atLevel(String text, double y, Color ink, double along) {
    levels.add(new Level(text, y, ink, along));
  }

  /** The name of a lane at its left end, over what is drawn in it. */
  void ofLane(String text, int lane) {
    lanes.add(new Lane(text, lane));
  }

  PlotAnnotation annotation() {
    return new PlotAnnotation(this);
  }

  @Override
  public void draw(Graphics2D graphics, PlotAnnotation.Axes axes) {
    Font font = theme.smallLetters();
    List<Rectangle2D> taken = new ArrayList<>();
    for (double[] mark : marks) {
      taken.add(
          new Rectangle2D.Double(
              axes.x(mark[0]) - reach, axes.y(mark[1]) - reach, 2 * reach, 2 * reach));
    }
    graphics.setFont(font);
    for (Lane lane : lanes) {
      double top = axes.side(lane.lane()) - size(graphics, lane.text()).getHeight() / 2;
      double left = axes.area().getMinX() + GAP_PIXELS;
      set(graphics, axes, lane.text(), theme.ink(), left, top, taken);
    }
    for (Level level : levels) {
      setAtLevel(graphics, axes, level, taken);
    }
    for (Label label : labels) {
      if (label.sides() != Sides.BELOW) {
        setBeside(graphics, axes, label, taken);
      }
    }
    setBelow(graphics, axes, taken);
    for (AtLine line : lines) {
      setAtLine(graphics, axes, line, taken);
    }
  }

  /** All of them or none: a word that is left alone seems to belong to its neighbour. */
  private void setBelow(Graphics2D graphics, PlotAnnotation.Axes axes, List<Rectangle2D> taken) {
    List<Label> below = labels.stream().filter(label -> label.sides() == Sides.BELOW).toList();
    Graphics2D nowhere = (Graphics2D) graphics.create();
    nowhere.setClip(0, 0, 0, 0);
    List<Rectangle2D> tried = new ArrayList<>(taken);
    boolean fit = below.stream().allMatch(label -> setBeside(nowhere, axes, label, tried));
    nowhere.dispose();
    if (fit) {
      below.forEach(label -> setBeside(graphics, axes, label, taken));
    }
  }

  private boolean setBeside(
      Graphics2D graphics, PlotAnnotation.Axes axes, Label label, List<Rectangle2D> taken) {
    Rectangle2D size = size(graphics, label.text());
    double x = axes.x(label.x());
    double y = axes.y(label.y());
    for (int[] side : label.sides().inOrder) {
      double away = reach + GAP_PIXELS;
      double left = x + side[0] * away - (1 - side[0]) * size.getWidth() / 2;
      double top = y + side[1] * away - (1 - side[1]) * size.getHeight() / 2;
      if (set(graphics, axes, label.text(), label.ink(), left, top, taken)) {
        return true;
      }
    }
    return false;
  }

  private void setAtLine(
      Graphics2D graphics, PlotAnnotation.Axes axes, AtLine line, List<Rectangle2D> taken) {
    Rectangle2D size = size(graphics, line.text());
    double x = axes.x(line.x());
    double top = axes.area().getMaxY() - size.getHeight() - 1;
    for (; top > axes.area().getCenterY(); top -= size.getHeight() / 2) {
      for (double left : new double[] {x + GAP_PIXELS, x - GAP_PIXELS - size.getWidth()}) {
        if (set(graphics, axes, line.text(), line.ink(), left, top, taken)) {
          return;
        }
      }
    }
  }

  private void setAtLevel(
      Graphics2D graphics, PlotAnnotation.Axes axes, Level level, List<Rectangle2D> taken) {
    Rectangle2D size = size(graphics, level.text());
    double y = axes.y(level.y());
    double free = axes.area().getWidth() - size.getWidth() - 2 * GAP_PIXELS;
    double left = axes.area().getMinX() + GAP_PIXELS + level.along() * free;
    for (double top : new double[] {y - size.getHeight() - 1, y + 1}) {
      if (set(graphics, axes, level.text(), level.ink(), left, top, taken)) {
        return;
      }
    }
  }

  private boolean set(
      Graphics2D graphics,
      PlotAnnotation.Axes axes,
      String text,
      Color ink,
      double left,
      double top,
      List<Rectangle2D> taken) {
    Rectangle2D size = size(graphics, text);
    Rectangle2D box = new Rectangle2D.Double(left, top, size.getWidth(), size.getHeight());
    if (!axes.area().contains(box) || taken.stream().anyMatch(box::intersects)) {
      return false;
    }
    taken.add(box);
    if (!lanes.isEmpty()) {
      graphics.setPaint(theme.background());
      graphics.fill(box);
    }
    graphics.setPaint(ink);
    graphics.drawString(text, (float) left, (float) (top - size.getY()));
    return true;
  }

  /** Around a text whose baseline begins at the origin. */
  private static Rectangle2D size(Graphics2D graphics, String text) {
    return graphics.getFontMetrics().getStringBounds(text, graphics);
  }
}
