package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.swing.Icon;

/** A full round for a rig that answers, a broken ring for one that does not. */
final class LinkDot implements Icon {
  private final Look look;
  private final boolean up;

  LinkDot(Look look, boolean up) {
    this.look = look;
    this.up = up;
  }

  @Override
  public int getIconWidth() {
    return Look.px(14);
  }

  @Override
  public int getIconHeight() {
    return Look.px(14);
  }

  @Override
  public void paintIcon(Component component, Graphics graphics, int x, int y) {
    Graphics2D g = (Graphics2D) graphics.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    int size = getIconWidth() - 3;
    if (up) {
      g.setColor(look.done());
      g.fillOval(x + 1, y + 1, size, size);
    } else {
      g.setColor(look.attention());
      g.setStroke(new BasicStroke(Look.px(2)));
      g.drawArc(x + 1, y + 1, size, size, 30, 240);
    }
    g.dispose();
  }
}
