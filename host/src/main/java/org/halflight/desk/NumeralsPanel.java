package org.halflight.desk;

import java.awt.Color;
import java.awt.Graphics2D;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.halflight.desk.view.CurtainText;
import org.halflight.desk.view.NumeralsText;
import org.halflight.desk.view.TwoText;
import org.halflight.words.Words;

/** The last firing: its error in stops, to be read from two metres, and under it what is known. */
final class NumeralsPanel extends ColumnBlock {
  private static final long serialVersionUID = 1L;

  private static final double NATURAL = 61;

  /** For the line of the centre below the figures of curtains, in millimetres. */
  private static final double FOOT = 7;

  private transient NumeralsText text = NumeralsText.NOTHING;
  private transient String mean = "";
  private transient Optional<TwoText> two = Optional.empty();
  private transient Optional<CurtainText> curtains = Optional.empty();
  private transient Consumer<NumeralsText> afterPaint = painted -> {};

  NumeralsPanel(Look look) {
    super(Words.say("desk.numerals.name"), NATURAL, look);
    setName("numerals");
  }

  void show(NumeralsText shown) {
    if (!shown.equals(text)) {
      text = shown;
      changed();
    }
  }

  /** Shows what the mean of the speed comes to; may be empty. */
  void showMean(String shown) {
    if (!shown.equals(mean)) {
      mean = shown;
      changed();
    }
  }

  /** Shows two speeds one above the other instead; empty for the last firing again. */
  void show(Optional<TwoText> shown) {
    if (!shown.equals(two)) {
      two = shown;
      changed();
    }
  }

  /** Shows the figures of curtains instead; empty for the last firing again. */
  void showCurtains(Optional<CurtainText> shown) {
    if (!shown.equals(curtains)) {
      curtains = shown;
      changed();
    }
  }

  private void changed() {
    speak(
        two.map(TwoText::spoken)
            .or(() -> curtains.map(CurtainText::spoken))
            .orElseGet(() -> mean.isEmpty() ? text.spoken() : text.spoken() + ", " + mean));
    repaint();
  }

  NumeralsText text() {
    return text;
  }

  /** The line of the mean. */
  String mean() {
    return mean;
  }

  /** Hears of every text when its pixels are drawn. */
  void afterPaint(Consumer<NumeralsText> hearer) {
    afterPaint = hearer;
  }

  @Override
  void paint(Graphics2D g) {
    g.setColor(look().ground());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (two.isPresent()) {
      paintTwo(g, two.get());
    } else if (curtains.isPresent()) {
      paintCurtains(g, curtains.get());
    } else {
      paintText(g);
    }
    afterPaint.accept(text);
  }

  /** One above the other: speed and what the adjustment did, the figure, how well it is known. */
  private void paintTwo(Graphics2D g, TwoText both) {
    int count = both.sides().size();
    for (int i = 0; i < count; i++) {
      TwoText.Side side = both.sides().get(i);
      int top = i * getHeight() / count;
      int height = (i + 1) * getHeight() / count - top;
      if (side.isShown()) {
        g.setColor(look().shade());
        g.fillRect(0, top, getWidth(), height);
      }
      Color ink = side.isWithin() ? look().done() : look().ink();
      paintLines(
          g,
          List.of(
              new Line(head(side), 4.5, 1.5, 1, true, ink),
              new Line(side.figure(), 14, 2, 1, true, ink),
              new Line(side.detail(), 3.2, 2, 2, true, look().ink())),
          false,
          top,
          height);
    }
  }

  private static String head(TwoText.Side side) {
    return side.word().isEmpty()
        ? side.speed()
        : Words.say("desk.two.head", side.speed(), side.word());
  }

  /** Three figures one above the other, and the centre in a line below. */
  private void paintCurtains(Graphics2D g, CurtainText text) {
    int foot = (int) (FOOT * unit());
    int count = text.sides().size();
    for (int i = 0; i < count; i++) {
      TwoText.Side side = text.sides().get(i);
      int top = i * (getHeight() - foot) / count;
      paintLines(
          g,
          List.of(
              new Line(head(side), 4, 1.5, 1, true, look().ink()),
              new Line(
                  side.figure(), 10, 1.8, 1, true, side.isWithin() ? look().done() : look().ink())),
          false,
          top,
          (i + 1) * (getHeight() - foot) / count - top);
    }
    paintLines(
        g,
        List.of(new Line(text.centre(), 4, 1, 1, true, look().ink())),
        false,
        getHeight() - foot,
        foot);
  }

  private void paintText(Graphics2D g) {
    Color ink = ink();
    boolean quiet =
        text.tone() == NumeralsText.Tone.STALE || text.tone() == NumeralsText.Tone.REJECTED;
    Color small = quiet ? look().quietInk() : look().ink();
    String large = text.unit().isEmpty() ? text.large() : text.large() + " " + text.unit();
    paintLines(
        g,
        List.of(
            new Line(text.note(), 3.5, 2.5, 2, true, look().quietInk()),
            new Line(
                large,
                text.tone() == NumeralsText.Tone.NOTHING ? 8 : 20,
                3,
                text.figure() ? 1 : 3,
                true,
                ink),
            new Line(text.word(), 7, 3, 1, true, ink),
            new Line(text.time(), 4.5, 2.5, 2, true, small),
            new Line(text.detail(), 4.5, 2, 2, true, small),
            new Line(mean, 4.5, 2, 2, true, look().ink())),
        false);
  }

  private Color ink() {
    return switch (text.tone()) {
      case SETTLED, PROVISIONAL -> look().ink();
      case OPEN, OUTCOME -> look().attention();
      case REJECTED, STALE, NOTHING -> look().quietInk();
    };
  }
}
