package org.halflight.desk;

import java.awt.Component;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.RoundRectangle2D;
import javax.swing.Icon;
import javax.swing.JLabel;

/** The top of a key with its name on it, as an icon. */
final class KeyCap implements Icon {
  private final String key;
  private final Look look;
  private final boolean strong;
  private final Font font = Look.bold(Look.NOTE);

  KeyCap(String key, Look look, boolean strong) {
    this.key = key;
    this.look = look;
    this.strong = strong;
  }

  @Override
  public int getIconWidth() {
    int text = new JLabel().getFontMetrics(font).stringWidth(key);
    return Math.max(text + Look.px(12), getIconHeight());
  }

  @Override
  public int getIconHeight() {
    return new JLabel().getFontMetrics(font).getHeight() + Look.px(6);
  }

  @Override
  public void paintIcon(Component component, Graphics graphics, int x, int y) {
    Graphics2D g = (Graphics2D) graphics.create();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    int width = getIconWidth();
    int height = getIconHeight();
    RoundRectangle2D cap =
        new RoundRectangle2D.Double(
            x + 0.5, y + 0.5, width - 1, height - 1, Look.px(7), Look.px(7));
    g.setColor(strong ? look.ink() : look.shade());
    g.fill(cap);
    g.setColor(strong ? look.ink() : look.quietInk());
    g.draw(cap);
    g.setColor(strong ? look.ground() : look.ink());
    g.setFont(font);
    int text = g.getFontMetrics().stringWidth(key);
    g.drawString(key, x + (width - text) / 2, y + Look.px(3) + g.getFontMetrics().getAscent());
    g.dispose();
  }
}
