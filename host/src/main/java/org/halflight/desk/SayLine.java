package org.halflight.desk;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import org.halflight.desk.view.SayText;
import org.halflight.words.Words;

/** The one sentence of the bench, with a stripe that says how much it matters. */
final class SayLine extends JPanel implements Looked {
  private static final long serialVersionUID = 1L;

  private final Passage area = new Passage("say", Words.say("desk.say.name"));
  private transient Look look;
  private transient SayText text = new SayText("", SayText.Kind.NEWS);

  SayLine(Look look) {
    super(new BorderLayout());
    this.look = look;
    area.setOpaque(false);
    area.setRows(2);
    add(area);
    look(look);
  }

  void show(SayText shown) {
    if (!shown.equals(text)) {
      text = shown;
      area.say(shown.text());
      dress();
    }
  }

  SayText text() {
    return text;
  }

  @Override
  public void look(Look another) {
    look = another;
    area.setBorder(null);
    area.setOpaque(false);
    area.setFont(Look.letters(1.3));
    setBorder(BorderFactory.createEmptyBorder(Look.px(8), Look.px(26), Look.px(6), Look.px(20)));
    dress();
  }

  @Override
  public Dimension getPreferredSize() {
    int lines = area.getFontMetrics(area.getFont()).getHeight() * 2;
    return new Dimension(Look.px(400), lines + Look.px(16));
  }

  @Override
  public Dimension getMinimumSize() {
    return getPreferredSize();
  }

  private void dress() {
    boolean asks = text.kind() == SayText.Kind.QUESTION;
    setBackground(asks ? look.askGround() : look.shade());
    area.setForeground(text.kind() == SayText.Kind.HINT ? look.quietInk() : look.ink());
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
