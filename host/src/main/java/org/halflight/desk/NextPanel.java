package org.halflight.desk;

import java.awt.BasicStroke;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import javax.accessibility.AccessibleRole;
import org.halflight.desk.view.NextText;
import org.halflight.words.Words;

/** The speed to set next, large before cocking, with its good firings counted. */
final class NextPanel extends PaintedComponent {
  private static final long serialVersionUID = 1L;

  private static final double SHARE_OF_NUMERALS = 0.72;

  private transient NextText text = NextText.NOTHING;

  NextPanel(Look look) {
    super(AccessibleRole.LABEL, Words.say("desk.next.name"), look);
    setName("next");
    setOpaque(true);
  }

  void show(NextText shown) {
    if (!shown.equals(text)) {
      text = shown;
      speak(shown.spoken());
      repaint();
    }
  }

  NextText text() {
    return text;
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(Look.mm(this, 100), Look.mm(this, 41));
  }

  @Override
  void paint(Graphics2D g) {
    g.setColor(look().shade());
    g.fillRect(0, 0, getWidth(), getHeight());
    int left = Look.px(20);
    int room = getWidth() - left - Look.px(10);
    Font small = Look.letters(1.1);
    g.setFont(fitted(g, small, text.heading(), room));
    g.setColor(look().quietInk());
    int y = Look.px(8) + g.getFontMetrics(small).getAscent();
    g.drawString(text.heading(), left, y);

    Font doing = fitted(g, Look.letters(1.35), text.doing(), room);
    y += Look.px(6) + g.getFontMetrics(doing).getAscent();
    g.setFont(doing);
    g.setColor(look().ink());
    g.drawString(text.doing(), left, y);

    int bottom = getHeight() - Look.px(14);
    int pips = !text.count().isEmpty() ? g.getFontMetrics(small).getHeight() : 0;
    int digits =
        (int)
            Math.min(
                NumeralsPanel.digitHeight(this) * SHARE_OF_NUMERALS,
                bottom - pips - y - Look.px(22));
    Font large = fitted(g, ofHeight(g, digits), text.large(), room);
    g.setFont(large);
    g.setColor(text.done() ? look().done() : look().ink());
    g.drawString(text.large(), left, bottom - pips - Look.px(10));
    if (!text.count().isEmpty()) {
      paintCount(g, small, left, bottom);
    }
  }

  /** Filled and hollow circles, and the same in words. */
  private void paintCount(Graphics2D g, Font font, int left, int bottom) {
    int size = Look.px(14);
    int gap = Look.px(7);
    int x = left;
    int most = (getWidth() / 2) / (size + gap);
    if (text.wanted() > 0 && text.wanted() <= most) {
      g.setStroke(new BasicStroke(Look.px(2)));
      for (int i = 0; i < text.wanted(); i++) {
        Ellipse2D pip = new Ellipse2D.Double(x + 1, bottom - size - 1, size - 2, size - 2);
        g.setColor(i < text.good() ? look().done() : look().quietInk());
        if (i < text.good()) {
          g.fill(pip);
        }
        g.draw(pip);
        x += size + gap;
      }
      x += gap;
    }
    g.setFont(font);
    g.setColor(look().ink());
    g.drawString(text.count(), x, bottom - Look.px(2));
  }
}
