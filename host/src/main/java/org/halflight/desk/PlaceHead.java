package org.halflight.desk;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.Arrays;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;

/** The head of a place: its title, and what can be done there in a row at the right. */
final class PlaceHead extends JPanel {
  private static final long serialVersionUID = 1L;

  private final JLabel title;

  PlaceHead(JLabel title, List<? extends JComponent> acts) {
    this.title = title;
    setOpaque(false);
    setLayout(new Row());
    add(title);
    acts.forEach(this::add);
  }

  /** Title left and acts right; where they are too many for that, they follow below in rows. */
  private final class Row implements LayoutManager {
    @Override
    public void addLayoutComponent(String name, Component component) {}

    @Override
    public void removeLayoutComponent(Component component) {}

    @Override
    public Dimension preferredLayoutSize(Container parent) {
      return new Dimension(0, place(false));
    }

    @Override
    public Dimension minimumLayoutSize(Container parent) {
      return new Dimension(0, place(false));
    }

    @Override
    public void layoutContainer(Container parent) {
      place(true);
    }

    /** As wide as the place lets it be. */
    private int width() {
      Container place = getParent();
      return place == null || place.getWidth() == 0
          ? Integer.MAX_VALUE / 4
          : place.getWidth() - 2 * Look.px(8 * Look.UNIT);
    }

    private int place(boolean really) {
      int gap = Look.px(2 * Look.UNIT);
      int all = really ? getWidth() : width();
      List<Component> acts =
          Arrays.stream(getComponents()).filter(each -> each != title && each.isVisible()).toList();
      int wide = acts.stream().mapToInt(each -> each.getPreferredSize().width + gap).sum();
      Dimension head = title.getPreferredSize();
      boolean isOneRow = head.width + 4 * gap + wide <= all;
      int high =
          Math.max(
              isOneRow ? head.height : 0,
              acts.stream().mapToInt(each -> each.getPreferredSize().height).max().orElse(0));
      int x = isOneRow ? all - wide + gap : 0;
      int y = isOneRow ? 0 : head.height + gap;
      if (really) {
        title.setBounds(
            0, isOneRow ? (high - head.height) / 2 : 0, Math.min(head.width, all), head.height);
      }
      for (Component each : acts) {
        Dimension size = each.getPreferredSize();
        if (x > 0 && x + size.width > all && !isOneRow) {
          x = 0;
          y += high + gap;
        }
        if (really) {
          each.setBounds(x, y + (high - size.height) / 2, size.width, size.height);
        }
        x += size.width + gap;
      }
      return y + (acts.isEmpty() ? 0 : high);
    }
  }
}
