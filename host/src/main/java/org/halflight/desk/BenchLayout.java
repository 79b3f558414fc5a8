package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;

/**
 * Where things stand on the bench: figures above, one sentence, pictures in the middle, keys below,
 * the edge bar at the left. Figures and sentence get what they need; the pictures get the rest.
 */
final class BenchLayout implements LayoutManager {
  private static final double NEXT_SHARE = 0.30;
  private static final double MAP_SHARE = 0.61;

  /** What is laid out; all of it is in the container. */
  record Parts(
      Component edge,
      Component next,
      Component numerals,
      Component say,
      Component mark,
      Component map,
      Component row,
      Component keys) {}

  private final Parts parts;

  BenchLayout(Parts parts) {
    this.parts = parts;
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
    int band = parts.numerals().getPreferredSize().height;
    int next = (int) (room * NEXT_SHARE);
    parts.next().setBounds(edge, 0, next, band);
    parts.numerals().setBounds(edge + next, 0, room - next, band);
    int y = band;
    int say = parts.say().getPreferredSize().height;
    parts.say().setBounds(edge, y, room, say);
    y += say;
    if (parts.mark().isVisible()) {
      int mark = parts.mark().getPreferredSize().height;
      parts.mark().setBounds(edge, y, room, mark);
      y += mark;
    }
    int keys = parts.keys().getPreferredSize().height;
    parts.keys().setBounds(edge, height - keys, room, keys);
    int pictures = Math.max(0, height - keys - y);
    int map = (int) (room * MAP_SHARE);
    parts.map().setBounds(edge, y, map, pictures);
    parts.row().setBounds(edge + map, y, room - map, pictures);
  }
}
