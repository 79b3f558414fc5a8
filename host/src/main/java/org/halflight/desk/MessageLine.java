package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Insets;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import org.halflight.desk.view.MessageText;
import org.halflight.words.Words;

/** The one sentence of the bench, with a stripe that says how much it matters. */
final class MessageLine extends JPanel implements LookListener {
  private static final long serialVersionUID = 1L;

  private final ReadOnlyText area = new ReadOnlyText("say", Words.say("desk.say.name"));
  private transient Look look;
  private transient MessageText text = new MessageText("", MessageText.Kind.NEWS);

  MessageLine(Look look) {
    super(new BorderLayout());
    this.look = look;
    area.setOpaque(false);
    add(area);
    look(look);
  }

  void show(MessageText shown) {
    if (!shown.equals(text)) {
      text = shown;
      area.say(shown.text());
      dress();
      revalidate();
    }
  }

  MessageText text() {
    return text;
  }

  @Override
  public void look(Look another) {
    look = another;
    area.setBorder(null);
    area.setOpaque(false);
    area.setFont(Look.letters(Look.LEAD));
    setBorder(BorderFactory.createEmptyBorder(Look.px(8), Look.px(26), Look.px(6), Look.px(20)));
    dress();
  }

  @Override
  public Dimension getPreferredSize() {
    Insets insets = getInsets();
    int width = getWidth() - insets.left - insets.right;
    if (width > 0) {
      // Wrapped text is as high as it is at the width that it has.
      area.setSize(width, Short.MAX_VALUE);
    }
    int lines = area.getFontMetrics(area.getFont()).getHeight() * 2;
    return new Dimension(
        Look.px(400), Math.max(lines, area.getPreferredSize().height) + insets.top + insets.bottom);
  }

  @Override
  public Dimension getMinimumSize() {
    return getPreferredSize();
  }

  private void dress() {
    boolean asks = text.kind() == MessageText.Kind.QUESTION;
    setBackground(asks ? look.askGround() : look.shade());
    area.setForeground(text.kind() == MessageText.Kind.HINT ? look.quietInk() : look.ink());
    repaint();
  }

  @Override
  protected void paintComponent(Graphics g) {
    super.paintComponent(g);
    Color stripe =
        switch (text.kind()) {
          case QUESTION, ATTENTION, TROUBLE -> look.attention();
          case NEWS, HINT -> null;
        };
    if (stripe != null) {
      g.setColor(stripe);
      g.fillRect(0, 0, Look.px(8), getHeight());
    }
  }
}
