package org.halflight.desk;

import java.awt.Graphics2D;
import java.util.List;
import org.halflight.desk.view.AdviceText;
import org.halflight.words.Words;

/** What to look at and what to do next, at the foot of the column. */
final class AdvicePanel extends ColumnBlock {
  private static final long serialVersionUID = 1L;

  private static final double NATURAL = 46;

  private transient AdviceText text = AdviceText.NOTHING;

  AdvicePanel(Look look) {
    super(Words.say("desk.advice.name"), NATURAL, look);
    setName("advice");
  }

  void show(AdviceText shown) {
    if (!shown.equals(text)) {
      text = shown;
      speak(shown.spoken());
      repaint();
    }
  }

  AdviceText text() {
    return text;
  }

  @Override
  void paint(Graphics2D g) {
    g.setColor(look().shade());
    g.fillRect(0, 0, getWidth(), getHeight());
    paintLines(
        g,
        List.of(
            head(text.lookAt().isEmpty() ? "" : Words.say("desk.advice.lookAt")),
            new Line(text.lookAt(), 10, 2, 2, true, look().ink()),
            head(text.next().isEmpty() ? "" : Words.say("desk.advice.next")),
            new Line(text.next(), 10, 2, 2, true, look().ink())),
        true);
  }

  private Line head(String words) {
    return new Line(words, 3.5, 2.5, 1, true, look().quietInk());
  }
}
