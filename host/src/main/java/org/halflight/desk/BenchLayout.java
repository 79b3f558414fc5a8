package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.stream.Stream;
import javax.swing.JComponent;

/**
 * Where things are on the bench. The edge bar at the left; beside it the column that is read from
 * two metres, whose parts never change place; right of that the pictures, and one sentence under
 * them; the keys below. Only the pictures give way.
 */
final class BenchLayout implements LayoutManager {
  private static final double COLUMN_SHARE = 1 / 3.0;

  /** Of what is left beside the column. */
  private static final double ROW_SHARE = 0.6;

  private static final double LARGE_SHARE = 0.64;

  /** Of the whole bench: the large picture is more than half of the window. */
  private static final double LARGE_LEAST = 0.555;

  /** In a narrower window the small picture has no place. */
  private static final int SMALL_FROM_WIDTH = 1200;

  /** What is laid out; all of it is in the container. */
  record Parts(
      JComponent edge,
      JComponent next,
      JComponent numerals,
      JComponent advice,
      JComponent say,
      JComponent mark,
      JComponent large,
      JComponent row,
      JComponent small,
      JComponent keys) {
    Stream<JComponent> all() {
      return Stream.of(edge, next, numerals, advice, say, mark, large, row, small, keys);
    }
  }

  /** In the far view: of its height for the speed and the figure, of its width for the speed. */
  private static final double FAR_ABOVE = 0.62;

  private static final double FAR_NEXT = 0.47;

  private final Parts parts;
  private boolean far;

  BenchLayout(Parts parts) {
    this.parts = parts;
  }

  /** Lays the column over the whole bench, or as usual. */
  void far(boolean on) {
    far = on;
  }

  @Override
  public void addLayoutComponent(String name, Component component) {}

  @Override
  public void removeLayoutComponent(Component component) {}

  @Override
  public Dimension preferredLayoutSize(Container container) {
    return new Dimension(Look.px(1280), Look.px(720));
  }

  @Override
  public Dimension minimumLayoutSize(Container container) {
    return new Dimension(Look.px(640), Look.px(400));
  }

  @Override
  public void layoutContainer(Container container) {
    int width = container.getWidth();
    int height = container.getHeight();
    int edge = parts.edge().getPreferredSize().width;
    parts.edge().setBounds(0, 0, edge, height);
    int room = width - edge;
    int bottom = far ? height : above(parts.keys(), edge, room, height);
    if (parts.mark().isVisible()) {
      bottom = above(parts.mark(), edge, room, bottom);
    }
    if (far) {
      layFar(edge, room, bottom);
      return;
    }
    int column = (int) Math.ceil(width * COLUMN_SHARE);
    layColumn(edge, column, bottom);
    layPictures(edge + column, width - edge - column, bottom, height);
  }

  private void layFar(int x, int width, int height) {
    int above = (int) (height * FAR_ABOVE);
    int next = (int) (width * FAR_NEXT);
    parts.next().setBounds(x, 0, next, above);
    parts.numerals().setBounds(x + next, 0, width - next, above);
    parts.advice().setBounds(x, above, width, height - above);
  }

  private static int above(JComponent part, int x, int width, int bottom) {
    int height = Math.min(bottom, part.getPreferredSize().height);
    part.setBounds(x, bottom - height, width, height);
    return bottom - height;
  }

  private void layColumn(int x, int width, int height) {
    int next = Math.min(parts.next().getPreferredSize().height, height);
    int numerals = Math.min(parts.numerals().getPreferredSize().height, height - next);
    parts.next().setBounds(x, 0, width, next);
    parts.numerals().setBounds(x, next, width, numerals);
    parts.advice().setBounds(x, next + numerals, width, height - next - numerals);
  }

  private void layPictures(int x, int width, int bottom, int whole) {
    parts.say().setSize(width, bottom);
    int below = above(parts.say(), x, width, bottom);
    int large =
        Math.min(below, (int) Math.ceil(Math.max(below * LARGE_SHARE, whole * LARGE_LEAST)));
    boolean isWide = parts.edge().getParent().getWidth() >= Look.px(SMALL_FROM_WIDTH);
    int row = isWide ? (int) (width * ROW_SHARE) : width;
    parts.large().setBounds(x, 0, width, large);
    parts.row().setBounds(x, large, row, below - large);
    parts.small().setVisible(isWide);
    parts.small().setBounds(x + row, large, width - row, below - large);
  }
}
