package org.halflight.desk;

import java.awt.Graphics2D;
import java.util.List;
import org.halflight.desk.view.NextText;
import org.halflight.words.Words;

/**
 * The speed to set next, large before cocking, with its good firings counted; for a second after
 * each firing what is counted.
 */
final class NextPanel extends ColumnBlock {
  private static final long serialVersionUID = 1L;

  private static final double NATURAL = 41;

  /** More circles than these are told in words alone. */
  private static final int PIPS_MOST = 8;

  private transient NextText text = NextText.NOTHING;

  NextPanel(Look look) {
    super(Words.say("desk.next.name"), NATURAL, look);
    setName("next");
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
  void paint(Graphics2D g) {
    g.setColor(look().shade());
    g.fillRect(0, 0, getWidth(), getHeight());
    boolean alone = text.heading().isEmpty();
    int pips = text.wanted() <= PIPS_MOST ? text.wanted() : 0;
    paintLines(
        g,
        List.of(
            new Line(
                alone ? text.label() : Words.say("desk.next.head", text.label(), text.heading()),
                alone ? 9 : 3.5,
                2.5,
                2,
                true,
                alone ? look().done() : look().quietInk()),
            new Line(text.large(), 20, 3.5, 2, true, text.done() ? look().done() : look().ink()),
            new Line(text.count(), 4.5, 3.5, 1, true, look().ink(), text.good(), pips)),
        false);
  }
}
