package org.halflight.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
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
    LEFT(new int[][] {{-1, 0}}),
    ABOVE(new int[][] {{0, -1}, {1, -1}, {-1, -1}, {0, 1}}),
    BELOW(new int[][] {{0, 1}});

    /** Never written to. */
    @SuppressWarnings("ImmutableEnumChecker")
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

  /** Words right of a place (1) or left of it (-1). */
  void onSide(String text, double x, double y, int side) {
    labels.add(new Label(text, x, y, side > 0 ? Sides.RIGHT : Sides.LEFT, theme.ink()));
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
    graphics.setFont(theme.smallLetters());
    Setting setting = new Setting(graphics, axes);
    marks.forEach(mark -> setting.keepOff(axes.at(mark[0], mark[1])));
    lanes.forEach(setting::lane);
    levels.forEach(setting::level);
    labels.stream().filter(label -> label.sides() != Sides.BELOW).forEach(setting::beside);
    setting.allOrNone(labels.stream().filter(label -> label.sides() == Sides.BELOW).toList());
    lines.forEach(setting::atLine);
    setting.write();
  }

  private record Placed(String text, Color ink, Rectangle2D box) {}

  /** Finds the places of words, then writes them. */
  private final class Setting {
    private final Graphics2D graphics;
    private final PlotAnnotation.Axes axes;
    private final Rectangle2D area;
    private final List<Rectangle2D> taken = new ArrayList<>();
    private final List<Placed> set = new ArrayList<>();

    Setting(Graphics2D graphics, PlotAnnotation.Axes axes) {
      this.graphics = graphics;
      this.axes = axes;
      area = axes.area();
    }

    void keepOff(Point2D at) {
      taken.add(new Rectangle2D.Double(at.getX() - reach, at.getY() - reach, 2 * reach, 2 * reach));
    }

    void lane(Lane lane) {
      double top = axes.side(lane.lane()) - size(lane.text()).getHeight() / 2;
      set(lane.text(), theme.ink(), area.getMinX() + GAP_PIXELS, top);
    }

    void level(Level level) {
      Rectangle2D size = size(level.text());
      double y = axes.y(level.y());
      double free = area.getWidth() - size.getWidth() - 2 * GAP_PIXELS;
      double left = area.getMinX() + GAP_PIXELS + level.along() * free;
      if (!set(level.text(), level.ink(), left, y - size.getHeight() - 1)) {
        set(level.text(), level.ink(), left, y + 1);
      }
    }

    boolean beside(Label label) {
      Rectangle2D size = size(label.text());
      double away = reach + GAP_PIXELS;
      Point2D at = axes.at(label.x(), label.y());
      for (int[] side : label.sides().inOrder) {
        double left = at.getX() + side[0] * away - (1 - side[0]) * size.getWidth() / 2;
        double top = at.getY() + side[1] * away - (1 - side[1]) * size.getHeight() / 2;
        if (set(label.text(), label.ink(), left, top)) {
          return true;
        }
      }
      return false;
    }

    /** A word that is left alone seems to belong to its neighbour. */
    void allOrNone(List<Label> all) {
      int before = set.size();
      if (!all.stream().allMatch(this::beside)) {
        List<Placed> alone = set.subList(before, set.size());
        alone.forEach(each -> taken.remove(each.box()));
        alone.clear();
      }
    }

    void atLine(AtLine line) {
      Rectangle2D size = size(line.text());
      double x = axes.x(line.x());
      double top = area.getMaxY() - size.getHeight() - 1;
      for (; top > area.getCenterY(); top -= size.getHeight() / 2) {
        if (set(line.text(), line.ink(), x + GAP_PIXELS, top)
            || set(line.text(), line.ink(), x - GAP_PIXELS - size.getWidth(), top)) {
          return;
        }
      }
    }

    private boolean set(String text, Color ink, double left, double top) {
      Rectangle2D size = size(text);
      Rectangle2D box = new Rectangle2D.Double(left, top, size.getWidth(), size.getHeight());
      if (!area.contains(box) || taken.stream().anyMatch(box::intersects)) {
        return false;
      }
      taken.add(box);
      set.add(new Placed(text, ink, box));
      return true;
    }

    void write() {
      for (Placed each : set) {
        if (!lanes.isEmpty()) {
          graphics.setPaint(theme.background());
          graphics.fill(each.box());
        }
        graphics.setPaint(each.ink());
        double baseline = each.box().getMinY() - size(each.text()).getY();
        graphics.drawString(each.text(), (float) each.box().getMinX(), (float) baseline);
      }
    }

    /** Around a text whose baseline begins at the origin. */
    private Rectangle2D size(String text) {
      return graphics.getFontMetrics().getStringBounds(text, graphics);
    }
  }
}
